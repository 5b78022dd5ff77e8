// SPDX-License-Identifier: EPL-2.0
/** The bench's lists as tables: wire list and parts list, and how a table becomes CSV. */
package org.loomwright.app.sheet;
