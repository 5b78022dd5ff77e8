// SPDX-License-Identifier: EPL-2.0
/** What the documents say: wires as pieces with two ends, what is crimped on them, what must and must not conduct. */
package org.loomwright.sheets.content;
