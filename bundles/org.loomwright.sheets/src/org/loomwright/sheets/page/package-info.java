// SPDX-License-Identifier: EPL-2.0
/** Lays documents out on pages: one look for all, with title block, page x of y, tables that wrap and break. */
package org.loomwright.sheets.page;
