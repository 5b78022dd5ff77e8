// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

/** Finds the operating point of a network. */
public interface NetworkSolver {

    /** Solves one network. Never throws for what a network is like; that is in the outcome. */
    Outcome solve(Netlist netlist);
}
