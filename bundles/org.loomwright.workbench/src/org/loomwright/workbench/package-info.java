// SPDX-License-Identifier: EPL-2.0
/** The workbench: a door to the same rooms as the command line, with windows. Nothing is computed in it. */
package org.loomwright.workbench;
