// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.HashMap;
import java.util.Map;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.link.WiringView;

/**
 * What the ends of wires are called across drawings: a cavity of a connector by the row of that connector, so that a
 * connector that another drawing calls otherwise is the same end. All splices are alike: they belong to the circuit.
 */
final class Ends {

    /** The key of every splice. */
    static final String SPLICE = "splice";

    private final Map<String, String> rows = new HashMap<>();

    /** Notes the row in which an element of a drawing stands. */
    void put(int column, String element, Section section, int row) {
        rows.putIfAbsent(column + "\n" + element, section.words() + row);
    }

    /** The key of an end. */
    String key(int column, WiringView view, Circuit.End end) {
        String name = end.target().text();
        if (view.splices().containsKey(name)) {
            return SPLICE;
        }
        return rows.getOrDefault(column + "\n" + name, name) + ":" + end.cavity().text();
    }
}
