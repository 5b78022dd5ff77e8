// SPDX-License-Identifier: EPL-2.0
/** Lines of source text taken apart into what each of them states, without a parser: for merging and for conflicts. */
package org.loomwright.harness.clause;
