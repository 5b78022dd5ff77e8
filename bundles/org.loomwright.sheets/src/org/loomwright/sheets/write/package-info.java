// SPDX-License-Identifier: EPL-2.0
/** Writes pages and tables as PDF, SVG, XLSX and CSV; equal input gives equal bytes. */
package org.loomwright.sheets.write;
