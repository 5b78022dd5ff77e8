// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What years and breaks within years mean, by the definition of the language. */
class BreaksTest {
    private final Vehicles vehicles = Vehicles.of(Choices.builder()
            .years(1965, 1968)
            .yearBreak("mid66", 1966, "from car 12345")
            .yearBreak("late66", 1966, "from car 20000")
            .yearBreak("last", 1968, "from car 90000")
            .build());

    private void means(String text, String... parts) {
        Condition condition = Orrin.condition(vehicles, text);
        List<String> found = condition.assignments(List.of("year"), 100).list().stream()
                .map(Assignment::words)
                .toList();
        assertEquals(List.of(parts), found, text);
    }

    @Test
    void aYearWithBreaksFallsIntoParts() {
        assertEquals(
                List.of("1965", "1966 before mid66", "mid66", "late66", "1967", "1968 before last", "last"),
                vehicles.choices().axis("year").orElseThrow().members());
    }

    @Test
    void aYearNumberMeansTheWholeYear() {
        means("year = 1966", "1966 before mid66", "mid66", "late66");
        means("year <= 1966", "1965", "1966 before mid66", "mid66", "late66");
        means("year < 1966", "1965");
        means("year >= 1968", "1968 before last", "last");
        means("year > 1966", "1967", "1968 before last", "last");
        means("year != 1966", "1965", "1967", "1968 before last", "last");
    }

    @Test
    void aBreakAloneMeansUpToTheNextBreakOrTheEndOfTheYear() {
        means("mid66", "mid66");
        means("late66", "late66");
        means("last", "last");
        means("year = mid66", "mid66");
        means("year != late66", "1965", "1966 before mid66", "mid66", "1967", "1968 before last", "last");
    }

    @Test
    void comparisonsWithABreak() {
        means("year < mid66", "1965", "1966 before mid66");
        means("year >= mid66", "mid66", "late66", "1967", "1968 before last", "last");
        means("year <= mid66", "1965", "1966 before mid66", "mid66");
        means("year > mid66", "late66", "1967", "1968 before last", "last");
        means("year > last");
        means("year <= last", "1965", "1966 before mid66", "mid66", "late66", "1967", "1968 before last", "last");
    }

    @Test
    void ranges() {
        means("year 1965 .. 1966", "1965", "1966 before mid66", "mid66", "late66");
        means("year 1966 .. 1966", "1966 before mid66", "mid66", "late66");
        means("year mid66 .. 1967", "mid66", "late66", "1967");
        means("year 1966 .. mid66", "1966 before mid66", "mid66");
        means("year late66 .. 1966", "late66");
        means("year mid66 .. late66", "mid66", "late66");
    }

    @Test
    void wordsForPartsOfYears() {
        words("year < mid66", "year < 1966 or year = 1966 and not mid66 and not late66");
        words("year 1966 .. mid66", "year >= 1966 and year < late66 and not year = 1965");
        words("year <= 1966", "year = 1965 or year = 1966");
        words("mid66", "year = 1966 and year > 1965 and year <= mid66 and year >= mid66");
        words("mid66 or late66", "year = 1966 and year >= mid66");
        words("year >= 1967 and not last", "year >= 1967 and not last");
        words("last", "year >= last");
        words("year != 1967", "not year = 1967");
        words("year >= 1966 and not last", "year > 1965 and year < last");
        words("not late66", "year <= mid66 or year > late66");
        words("year 1966 .. 1967", "year 1966 .. 1967");
        words("not (mid66 or late66)", "not (year mid66 .. 1966)");
        words("year = 1965 or year = 1967", "year = 1965 or year = 1967");
    }

    private void words(String least, String text) {
        Condition condition = Orrin.condition(vehicles, text);
        assertEquals(Orrin.condition(vehicles, least), condition, least);
        assertEquals(least, condition.words());
    }
}
