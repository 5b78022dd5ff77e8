// SPDX-License-Identifier: EPL-2.0
/** The language services at the doors of the platform's text editor; each class is one door, and thin. */
package org.loomwright.workbench.editor;
