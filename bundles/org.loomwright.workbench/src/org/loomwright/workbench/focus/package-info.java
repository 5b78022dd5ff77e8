// SPDX-License-Identifier: EPL-2.0
/** What the windows look at together: a project and the vehicles that were chosen. */
package org.loomwright.workbench.focus;
