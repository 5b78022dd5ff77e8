// SPDX-License-Identifier: EPL-2.0
/** The views. Each shows something that was worked out elsewhere, off the thread that draws. */
package org.loomwright.workbench.view;
