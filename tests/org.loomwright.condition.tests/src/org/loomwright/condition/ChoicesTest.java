// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ChoicesTest {
    private static void problem(Choices.Builder builder, Problem.Kind kind, String message) {
        List<Problem> problems = builder.build().problems();
        assertEquals(1, problems.size(), problems.toString());
        assertEquals(kind, problems.getFirst().kind());
        assertEquals(message, problems.getFirst().message());
    }

    @Test
    void axesStandInAFixedOrder() {
        Choices choices = Choices.builder()
                .upgrade("fan")
                .option("heater")
                .group("body", "saloon", "estate")
                .years(1964, 1965)
                .build();
        assertEquals(List.of("year", "body", "heater", "fan"), choices.axes().stream().map(Axis::name).toList());
        assertEquals(List.of("not fan", "fan"), choices.axis("fan").orElseThrow().members());
        assertEquals(16, Vehicles.of(choices).count().intValue());
    }

    @Test
    void equalDescriptionsAreEqual() {
        assertEquals(Orrin.builder().build(), Orrin.builder().build());
        assertEquals(Orrin.builder().build().hashCode(), Orrin.builder().build().hashCode());
    }

    @Test
    void breaksAreSortedByYearAndKeepTheirOrderWithinOne() {
        Choices choices = Choices.builder()
                .years(1964, 1966)
                .yearBreak("b", 1966, "from car 1")
                .yearBreak("a", 1966, "from car 2")
                .yearBreak("c", 1964, "from car 3")
                .build();
        assertEquals(List.of("c", "b", "a"), choices.breaks().stream().map(Choices.Break::name).toList());
    }

    @Test
    void whatCannotStandIsReportedAndLeftOut() {
        problem(Orrin.builder().option("fan"), Problem.Kind.DUPLICATE_NAME,
                "fan already means something else on this platform");
        problem(Orrin.builder().option("saloon"), Problem.Kind.DUPLICATE_NAME,
                "saloon already means something else on this platform");
        problem(Orrin.builder().group("heater", "weak", "strong"), Problem.Kind.DUPLICATE_NAME,
                "heater already means something else on this platform");
        problem(Orrin.builder().group("year", "early", "late"), Problem.Kind.DUPLICATE_NAME,
                "year already means something else on this platform");
        problem(Orrin.builder().group("trim", "plain", "saloon"), Problem.Kind.DUPLICATE_NAME,
                "saloon already means something else on this platform");
        problem(Orrin.builder().group("trim"), Problem.Kind.EMPTY_GROUP, "the group trim has no members");
        problem(Orrin.builder().yearBreak("late75", 1975, ""), Problem.Kind.BREAK_OUTSIDE_YEARS,
                "late75 falls in 1975, which is no year of the platform");
        problem(Choices.builder().years(1971, 1964), Problem.Kind.IMPOSSIBLE_YEARS,
                "the years 1971 .. 1964 run backwards");
        problem(Choices.builder().years(Integer.MIN_VALUE, Integer.MAX_VALUE), Problem.Kind.IMPOSSIBLE_YEARS,
                "-2147483648 .. 2147483647 are more than 200 model years");
    }

    @Test
    void theRestStaysUsable() {
        Vehicles vehicles = Vehicles.of(Orrin.builder().option("fan").group("trim").build());
        assertEquals(Orrin.vehicles().count(), vehicles.count());
        assertEquals(2, vehicles.problems().size());
    }

    @Test
    void aPlatformWithoutChoicesHasOneVehicle() {
        Vehicles vehicles = Vehicles.of(Choices.builder().build());
        assertEquals("1 of 1 vehicle", vehicles.all().tally());
        assertEquals("every vehicle", vehicles.all().words());
        assertEquals(Map.of(), vehicles.all().example().orElseThrow().members());
        assertEquals(1, vehicles.all().assignments(List.of(), 5).list().size());
    }

    @Test
    void aGroupOfOneIsNoChoice() {
        Vehicles vehicles = Vehicles.of(Choices.builder().group("body", "saloon").option("fan").build());
        assertEquals(2, vehicles.count().intValue());
        assertEquals(true, Orrin.condition(vehicles, "saloon").isAlways());
        assertEquals("fan", Orrin.condition(vehicles, "saloon and fan").words());
    }

    @Test
    void assignmentsOfUnknownNamesAreAMistakeOfTheCaller() {
        Vehicles vehicles = Orrin.vehicles();
        Assignment wrong = new Assignment(Map.of("body", "wagon"));
        assertThrows(IllegalArgumentException.class, () -> vehicles.where(wrong));
        assertThrows(IllegalArgumentException.class, () -> vehicles.all().and(Orrin.vehicles().all()));
    }
}
