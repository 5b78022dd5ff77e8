// SPDX-License-Identifier: EPL-2.0
/**
 * Makes the certain ones of the changes that findings offer, and shows what it made: which file, which line, which
 * rule. All of it happens in memory until the last step, which writes whole files.
 */
package org.loomwright.app.fix;
