// SPDX-License-Identifier: EPL-2.0
/** Prints documents of a project from the workbench, with the code that prints them from the command line. */
package org.loomwright.workbench.sheets;
