// SPDX-License-Identifier: EPL-2.0
/**
 * Holds the repository against the rules of the house: which bundle uses which, what a public API shows, how long a
 * class is, what lies where.
 */
package org.loomwright.architecture;
