// SPDX-License-Identifier: EPL-2.0
/** The perspective and what the workbench starts with. */
package org.loomwright.workbench.start;
