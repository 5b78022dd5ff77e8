// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.loomwright.harness.link.NaturalOrder;

/**
 * Where facts of an element have their place: two facts in one slot exclude each other, or hold for different vehicles.
 *
 * @param property what is stated
 * @param subject  of what within the element: a cavity, a drawing; {@link Value#NONE} where there is only one
 */
public record Slot(Property property, Value subject) implements Comparable<Slot> {

    private static final Comparator<Slot> ORDER = Comparator
            .comparing((Slot slot) -> slot.subject().shown(), new NaturalOrder())
            .thenComparing(slot -> slot.subject().key());

    private static final List<Slot> WITHOUT_SUBJECT = Arrays.stream(Property.values())
            .map(property -> new Slot(property, Value.NONE)).toList();

    /** A slot without subject. */
    public static Slot of(Property property) {
        return WITHOUT_SUBJECT.get(property.ordinal());
    }

    /** The words for people: {@code terminal 7}, {@code size}. */
    public String words() {
        return (property.words() + " " + subject.shown()).strip();
    }

    @Override
    public int compareTo(Slot other) {
        return property != other.property ? property.compareTo(other.property)
                : subject == other.subject ? 0 : ORDER.compare(this, other);
    }
}
