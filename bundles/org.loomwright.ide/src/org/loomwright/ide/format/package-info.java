// SPDX-License-Identifier: EPL-2.0
/** Brings a text into its canonical form, as a change of the lines that differ. */
package org.loomwright.ide.format;
