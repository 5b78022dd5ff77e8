// SPDX-License-Identifier: EPL-2.0
/** Composes the documents, one class for each sort, from what the content says. */
package org.loomwright.sheets.compose;
