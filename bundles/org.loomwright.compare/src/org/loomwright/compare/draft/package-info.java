// SPDX-License-Identifier: EPL-2.0
/**
 * A harness of ours drafted from the drawings that it is to cover: its runs without figures, what it connects in which
 * vehicles, and each choice that was made.
 */
package org.loomwright.compare.draft;
