// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.loomwright.quantity.Length;

/**
 * What one drawing says of one fact.
 *
 * @param values its values: one, or several under different conditions; none when the drawing does not have it
 */
public record Cell(List<Value> values) {

    /** The drawing says nothing of it. */
    public static final Cell ABSENT = new Cell(List.of());

    public Cell {
        values = List.copyOf(values);
    }

    /** True when the drawing does not have it. */
    public boolean isAbsent() {
        return values.isEmpty();
    }

    /** All values, {@code 14 ga / 16 ga when fan}; empty when absent. */
    public String words() {
        return values.stream().map(Value::words).collect(Collectors.joining(" / "));
    }

    /** The length, when it is one length for all vehicles of the drawing, and known. */
    public Optional<Length> length() {
        return values.size() == 1 ? values.getFirst().length() : Optional.empty();
    }

    /** True when its one length is along the path. */
    boolean isPath() {
        return values.size() == 1 && values.getFirst().path();
    }

    /** Whether both say the same, in whatever order and spelling. */
    public boolean says(Cell other) {
        return sameness().equals(other.sameness());
    }

    /** Values under several conditions that all are the same one are that one. */
    String sameness() {
        if (values.size() > 1 && values.stream().map(Value::key).distinct().count() == 1) {
            return values.getFirst().key() + "\n";
        }
        return values.stream().map(Value::sameness).sorted().collect(Collectors.joining("\n\n"));
    }
}
