// SPDX-License-Identifier: EPL-2.0
/** What the comparison of files shows: the changes as a tree above the text, and how one of them is taken over. */
package org.loomwright.workbench.compare;
