// SPDX-License-Identifier: EPL-2.0
/**
 * Rules about the drawings of a platform as a whole: does every vehicle have one in each position, and only one?
 */
package org.loomwright.rules.coverage;
