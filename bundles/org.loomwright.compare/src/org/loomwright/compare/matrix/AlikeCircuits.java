// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.List;
import java.util.Map;
import org.loomwright.harness.Circuit;

/**
 * The circuits of several drawings that are one function.
 *
 * @param circuits by column; a column without it is left out
 * @param wires    the wires that are the same, by column, row after row
 */
public record AlikeCircuits(Map<Integer, Circuit> circuits, List<Map<Integer, Circuit.Wire>> wires) {

    public AlikeCircuits {
        circuits = Map.copyOf(circuits);
        wires = List.copyOf(wires);
    }
}
