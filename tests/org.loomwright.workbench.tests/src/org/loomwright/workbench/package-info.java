// SPDX-License-Identifier: EPL-2.0
/** The workbench as a person uses it: in a window, with keyboard and mouse. */
package org.loomwright.workbench;
