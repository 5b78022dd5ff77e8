// SPDX-License-Identifier: EPL-2.0
/** What each user has as they like it: units on the screen and patience. How a project is judged is not among it. */
package org.loomwright.workbench.preference;
