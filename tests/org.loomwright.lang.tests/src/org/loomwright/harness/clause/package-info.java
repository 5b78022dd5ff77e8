// SPDX-License-Identifier: EPL-2.0
/** Lines taken apart by words, held against the grammar. */
package org.loomwright.harness.clause;
