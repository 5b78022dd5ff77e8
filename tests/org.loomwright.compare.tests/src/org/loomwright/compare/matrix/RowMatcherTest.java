// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Which elements share a row. */
class RowMatcherTest {

    private static Item<String> item(int column, String name, String... features) {
        return new Item<>(column, name, Set.of(features), name);
    }

    @SafeVarargs
    private static List<String> rows(boolean namesFirst, List<Item<String>>... drawings) {
        RowMatcher<String> matcher = new RowMatcher<>(namesFirst);
        List.of(drawings).forEach(matcher::add);
        return matcher.rows().stream().map(row -> row.items().stream()
                .map(item -> item.column() + "=" + item.name()).collect(Collectors.joining(" "))).toList();
    }

    @Test
    void anOldNumberOnAnotherCircuitIsNoMatch() {
        assertEquals(List.of("0=30 1=71", "0=1 1=30"), rows(true,
                List.of(item(0, "30", "bulkhead:6", "horn:1"), item(0, "1", "battery:plus", "bulkhead:8")),
                List.of(item(1, "30", "battery:plus", "bulkhead:8", "bulkhead:10"),
                        item(1, "71", "bulkhead:9", "horn:1"))));
    }

    @Test
    void anEqualNumberNeedsOnlyOneSharedEnd() {
        assertEquals(List.of("0=12 1=12"), rows(true, List.of(item(0, "12", "a", "b", "c", "d")),
                List.of(item(1, "12", "a", "e", "f", "g"))));
    }

    @Test
    void anotherNumberNeedsHalfOfTheEnds() {
        assertEquals(List.of("0=12 1=56"), rows(true, List.of(item(0, "12", "a", "b")), List.of(item(1, "56", "a",
                "c"))));
        assertEquals(List.of("0=12", "1=56"), rows(true, List.of(item(0, "12", "a", "b")),
                List.of(item(1, "56", "a", "c", "d"))));
    }

    @Test
    void theMoreAlikeOfTwoIsTaken() {
        assertEquals(List.of("0=12 1=57", "1=56"), rows(true, List.of(item(0, "12", "a", "b", "c")),
                List.of(item(1, "56", "a", "b"), item(1, "57", "a", "b", "c"))));
    }

    @Test
    void equalNamesSettleATieWhereEndsGoFirst() {
        assertEquals(List.of("0=a 1=a", "1=b"), rows(false, List.of(item(0, "a", "battery", "way8")),
                List.of(item(1, "b", "way8"), item(1, "a", "battery"))));
    }

    @Test
    void aRowIsFoundAgainThroughAnyOfItsMembers() {
        assertEquals(List.of("0=12 1=56 2=x"), rows(true, List.of(item(0, "12", "a", "b")),
                List.of(item(1, "56", "b", "c")), List.of(item(2, "x", "c", "d"))));
    }

    @Test
    void whatNobodyDescribesIsKnownByItsNameAlone() {
        assertEquals(List.of("0=lamp 1=lamp", "1=horn"), rows(true, List.of(item(0, "lamp")),
                List.of(item(1, "horn"), item(1, "lamp"))));
    }
}
