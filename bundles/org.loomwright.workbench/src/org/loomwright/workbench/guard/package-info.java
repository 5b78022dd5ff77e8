// SPDX-License-Identifier: EPL-2.0
/** What keeps long work away from the thread that draws windows. */
package org.loomwright.workbench.guard;
