// SPDX-License-Identifier: EPL-2.0
/**
 * Computes the harness: from what all covered drawings ask, the stations of the breakouts and the lengths of the
 * branches, best in the order of objectives that the harness states, with proof. All in integers (nanometres). The
 * judge shares no code with it.
 */
package org.loomwright.fit.plan;
