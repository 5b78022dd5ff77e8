// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Names and order of elements. */
class ItemIdTest {

    @Test
    void elementsAreOrderedByOwnerSortAndNumber() {
        ItemId ten = new ItemId(Sort.CONNECTOR, "front", "J10");
        ItemId two = new ItemId(Sort.CONNECTOR, "front", "J2");
        ItemId circuit = new ItemId(Sort.CIRCUIT, "front", "1");
        ItemId part = new ItemId(Sort.PART, "", "zeta");
        assertEquals(List.of(part, two, ten, circuit), Stream.of(circuit, ten, part, two).sorted().toList());
    }

    @Test
    void theLabelNamesTheOwner() {
        assertEquals("connector J2 of front", new ItemId(Sort.CONNECTOR, "front", "J2").label());
        assertEquals("part blueTab", new ItemId(Sort.PART, "", "blueTab").label());
    }
}
