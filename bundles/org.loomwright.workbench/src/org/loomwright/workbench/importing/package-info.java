// SPDX-License-Identifier: EPL-2.0
/** The wizard that takes over wire lists; what becomes of a row is worked out elsewhere. */
package org.loomwright.workbench.importing;
