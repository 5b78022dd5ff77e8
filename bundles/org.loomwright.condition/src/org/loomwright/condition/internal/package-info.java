// SPDX-License-Identifier: EPL-2.0
/**
 * The mathematics behind conditions, without names: functions over axes with numbered members, held in a binary
 * decision diagram, and their smallest covers by cubes. The only package that knows the library for boolean functions.
 */
package org.loomwright.condition.internal;
