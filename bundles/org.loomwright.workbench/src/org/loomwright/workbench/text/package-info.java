// SPDX-License-Identifier: EPL-2.0
/** Figures and words as the windows show them. */
package org.loomwright.workbench.text;
