// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.loomwright.condition.Reader.expression;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is said about conditions that are wrong, and what is made of the rest of them. */
class ResolutionTest {
    private final Vehicles vehicles = Orrin.withBreaks();

    private void problem(String text, Problem.Kind kind, String message, String at, String candidate) {
        Resolution resolution = vehicles.resolve(expression(text));
        assertEquals(1, resolution.problems().size(), resolution.problems().toString());
        Problem problem = resolution.problems().getFirst();
        assertEquals(kind, problem.kind());
        assertEquals(message, problem.message());
        assertEquals(at, text.substring(problem.offset(), problem.offset() + problem.length()));
        assertEquals(Optional.ofNullable(candidate), problem.candidate());
        assertEquals(vehicles.all(), resolution.condition());
    }

    @Test
    void namesThatDoNotExist() {
        problem("saloom", Problem.Kind.UNKNOWN_CHOICE,
                "nothing that can be chosen is called saloom", "saloom", "saloon");
        problem("Fan", Problem.Kind.UNKNOWN_CHOICE,
                "nothing that can be chosen is called Fan", "Fan", "fan");
        problem("electronicFlahser", Problem.Kind.UNKNOWN_CHOICE,
                "nothing that can be chosen is called electronicFlahser",
                "electronicFlahser", "electronicFlasher");
        problem("zebra", Problem.Kind.UNKNOWN_CHOICE, "nothing that can be chosen is called zebra", "zebra", null);
        problem("body", Problem.Kind.UNKNOWN_CHOICE, "body is a group; name one of its members", "body", null);
        problem("1966", Problem.Kind.UNKNOWN_CHOICE,
                "1966 alone says too little", "1966", "year = 1966");
    }

    @Test
    void comparisonsThatMakeNoSense() {
        problem("body < coupe", Problem.Kind.NOT_ORDERED,
                "the members of body have no order; only = and != compare them", "body < coupe", null);
        problem("body saloon .. coupe", Problem.Kind.NOT_ORDERED,
                "the members of body have no order; only = and != compare them", "body saloon .. coupe", null);
        problem("body = saloom", Problem.Kind.UNKNOWN_MEMBER,
                "body has no member saloom", "body = saloom", "saloon");
        problem("body = fan", Problem.Kind.UNKNOWN_MEMBER, "body has no member fan", "body = fan", null);
        problem("boddy = saloon", Problem.Kind.UNKNOWN_GROUP,
                "no group is called boddy", "boddy = saloon", "body");
        problem("fan = saloon", Problem.Kind.UNKNOWN_GROUP,
                "fan is no group and has no members", "fan = saloon", null);
    }

    @Test
    void yearsThatMakeNoSense() {
        problem("year = 1973", Problem.Kind.OUTSIDE_YEARS,
                "1973 is outside the years 1964 .. 1971", "year = 1973", null);
        problem("year 1963 .. 1966", Problem.Kind.OUTSIDE_YEARS,
                "1963 is outside the years 1964 .. 1971", "year 1963 .. 1966", null);
        problem("year 1968 .. 1966", Problem.Kind.EMPTY_RANGE,
                "1968 .. 1966 ends before it starts", "year 1968 .. 1966", "1966 .. 1968");
        problem("year < lat66", Problem.Kind.UNKNOWN_MEMBER,
                "lat66 is neither a year nor a break in one", "year < lat66", "late66");
        problem("year < saloon", Problem.Kind.UNKNOWN_MEMBER,
                "saloon is neither a year nor a break in one", "year < saloon", null);
    }

    @Test
    void aPlatformWithoutYearsHasNoYear() {
        Vehicles plain = Vehicles.of(Choices.builder().option("fan").build());
        Problem problem = plain.resolve(expression("year = 1966")).problems().getFirst();
        assertEquals("no group is called year", problem.message());
    }

    @Test
    void partsWithAProblemCountAsIfTheyHadNotBeenWritten() {
        Condition saloon = Orrin.condition(vehicles, "saloon");
        assertEquals(saloon, vehicles.resolve(expression("saloon and fann")).condition());
        assertEquals(saloon, vehicles.resolve(expression("saloon or not fann")).condition());
        assertEquals(saloon, vehicles.resolve(expression("saloon and (fann or heated)")).condition());
        assertEquals(2, vehicles.resolve(expression("saloon and (fann or heated)")).problems().size());
        assertEquals(vehicles.all(), vehicles.resolve(expression("not (fann and heated)")).condition());
        assertTrue(vehicles.resolve(new Expression.Or(List.of())).condition().isNever());
        assertTrue(vehicles.resolve(new Expression.Always()).condition().isAlways());
    }

    @Test
    void nestingWithoutEndIsAProblemAndNoStackOverflow() {
        Expression deep = new Expression.Choice("fan");
        for (int i = 0; i < 100_000; i++) {
            deep = new Expression.Not(deep);
        }
        List<Problem> problems = vehicles.resolve(deep).problems();
        assertEquals(1, problems.size());
        assertEquals(Problem.Kind.TOO_LARGE, problems.getFirst().kind());
        List<Expression> many = new ArrayList<>();
        for (int i = 0; i < 100_000; i++) {
            many.add(new Expression.Choice("fan"));
        }
        assertEquals(1, vehicles.resolve(new Expression.And(many)).problems().size());
    }

    @Test
    void constraintsWithAProblemAreLeftOutAndReported() {
        Vehicles orrin = Vehicles.of(Orrin.builder()
                .never(expression("heatr"))
                .require(expression("fan"), expression("hallogen"))
                .build());
        assertEquals(2, orrin.problems().size());
        assertEquals("hallogen", orrin.problems().get(1).subject());
        assertEquals(Orrin.vehicles().count(), orrin.count());
    }

    @Test
    void contradictionsLeaveNoVehicle() {
        Vehicles nothing = Vehicles.of(Orrin.builder()
                .never(expression("heater"))
                .require(expression("heater"), new Expression.Always())
                .build());
        assertEquals(0, nothing.count().signum());
        assertEquals(nothing.all(), nothing.none());
        assertEquals("no vehicle", nothing.all().words());
        assertEquals("0 of 0 vehicles", nothing.all().tally());
        assertEquals(Optional.empty(), nothing.all().example());
        Condition fan = Orrin.condition(nothing, "fan");
        assertTrue(fan.isNever() && fan.isAlways());
        assertEquals(List.of(), fan.assignments(List.of("body"), 10).list());
    }
}
