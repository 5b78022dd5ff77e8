// SPDX-License-Identifier: EPL-2.0
/** The guide: the pages that the build makes from the documentation, and the way to the right one. */
package org.loomwright.workbench.guide;
