// SPDX-License-Identifier: EPL-2.0
/** What is known of each project while its files are edited, and who wants to hear of it. */
package org.loomwright.workbench.truth;
