// SPDX-License-Identifier: EPL-2.0
/** Figures that stand beside the text: the cut length at a wire, the number of vehicles at a condition. */
package org.loomwright.ide.inlay;
