// SPDX-License-Identifier: EPL-2.0
/** Wire lists of others become drawings, row by row, with a reason for each row that cannot be taken. */
package org.loomwright.app.importing;
