// SPDX-License-Identifier: EPL-2.0
/**
 * What follows from a revision: each engine measures both sides in its own way and says what is worse, better or other.
 */
package org.loomwright.compare.consequence;
