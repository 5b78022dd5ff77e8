// SPDX-License-Identifier: EPL-2.0
/** What a document consists of: blocks of text, tables and drawings, and the marks that drawings are made of. */
package org.loomwright.sheets.document;
