// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.fault;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.loomwright.app.BadCall;
import org.loomwright.condition.Condition;
import org.loomwright.electric.Example;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.Alteration;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.protection.Withstand;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.Project;

class FaultStudyTest {

    /** Constants of IEC 60364-5-54 for copper (as tables print them, from memory) against the formula. */
    @Tag("outside")
    @ParameterizedTest
    @CsvSource({"70, 160, 115", "90, 250, 143", "30, 160, 143", "30, 250, 176", "60, 200, 141"})
    void theAdiabaticConstantIsThatOfTheStandard(double initial, double last, double k) {
        assertEquals(k, Withstand.k(initial, last), 0.5);
    }

    /** 1 mm², k = 115, 100 A: (115 x 1 / 100)² = 1.3225 s. */
    @Test
    void aWireBearsItForTheSquareOfKTimesItsSectionOverTheCurrent() {
        assertEquals(1.3225, Math.pow(Withstand.k(70, 160) / 100, 2), 2e-4);
        assertEquals(4, Withstand.seconds(2, 85, 100) / Withstand.seconds(1, 85, 100), 1e-9);
    }

    private record Case(Schematic schematic, Condition vehicle, Mode mode, FaultStudy study) {
    }

    private static Case sneak() throws BadCall {
        Project project = Example.at(java.nio.file.Path.of(System.getProperty("loomwright.root")).normalize()
                .resolve("docs/examples/broken/sneak-path-mended.loom"));
        Schematic schematic = Schematic.of(project).getFirst();
        Condition vehicle = Example.vehicle(project.platforms().get("demo"), "1966");
        Mode mode = schematic.mode("night").orElseThrow();
        return new Case(schematic, vehicle, mode, FaultStudy.of(schematic, vehicle, mode,
                new Ratings(schematic, Ampacity.cfr())));
    }

    @Test
    void aLostGroundDarkensItsLamp() throws BadCall {
        FaultStudy study = sneak().study();
        FaultStudy.Opened ground = study.opened().stream()
                .filter(each -> each.piece().subject().label().startsWith("ring of 90a")).findFirst().orElseThrow();
        assertEquals(List.of("Lamp"), ground.dark().stream().map(each -> each.subject().label()).toList());
    }

    @Test
    void aFuseThatOpensDarkensWhatItFeeds() throws BadCall {
        FaultStudy study = sneak().study();
        FaultStudy.Opened fuse = study.opened().stream()
                .filter(each -> each.piece().subject().element().equals("F1")).findFirst().orElseThrow();
        assertTrue(fuse.dark().stream().anyMatch(each -> each.subject().label().equals("Lamp")));
    }

    @Test
    void aShortIsFedThroughTheFuseThatStandsBeforeIt() throws BadCall {
        FaultStudy study = sneak().study();
        FaultStudy.Shorted lamp = study.shorts().stream()
                .filter(each -> each.wire().subject().element().equals("12a")).findFirst().orElseThrow();
        assertEquals(Optional.of("F1"), lamp.device().map(each -> each.subject().element()));
        assertTrue(lamp.least() < lamp.most());
        assertTrue(lamp.ratio() > 5, "a dead short is many times the rating: " + lamp.ratio());
        assertEquals("not judged", lamp.verdict());
        assertTrue(study.shorts().stream().anyMatch(each -> each.device().isEmpty()
                && each.verdict().equals("no device before it")));
    }

    /** What is found is put into the network, and the contact then loses 0.1 V. */
    @Test
    void aContactWithTheResistanceFoundLosesATenthOfAVolt() throws BadCall {
        Case each = sneak();
        assertFalse(each.study().worn().isEmpty());
        PointSolver solver = new PointSolver(each.schematic(), Optional.empty(), 50);
        OperatingPoint good = solver.solve(each.vehicle(), each.mode());
        for (FaultStudy.Worn worn : each.study().worn()) {
            Piece piece = worn.piece();
            double more = worn.ohms() - Math.abs(good.volts(piece) / good.amps(piece));
            if (more > 0) {
                OperatingPoint bad = solver.solve(each.vehicle(), each.schematic().holding(each.vehicle()), each.mode(),
                        Alteration.resist(piece.index(), more));
                assertEquals(FaultStudy.BAD_CONTACT, Math.abs(bad.amps(piece)) * worn.ohms(), 1e-6,
                        piece.subject().label());
            }
        }
    }

    /** What is found is put into the network, and the contact then is as hot as it is in good order at its rating. */
    @Test
    void aContactWithTheResistanceFoundIsAsHotAsAtItsRating() throws BadCall {
        Case each = sneak();
        PointSolver solver = new PointSolver(each.schematic(), Optional.empty(), 50);
        int hot = 0;
        for (FaultStudy.Worn worn : each.study().worn()) {
            Piece piece = worn.piece();
            if (worn.hot().isPresent()) {
                double good = ((Model.Fixed) piece.model()).ohms();
                OperatingPoint bad = solver.solve(each.vehicle(), each.schematic().holding(each.vehicle()),
                        each.mode(), Alteration.resist(piece.index(), worn.hot().getAsDouble() - good));
                double amps = bad.amps(piece);
                assertEquals(piece.rating() * piece.rating() * good, amps * amps * worn.hot().getAsDouble(), 1e-5,
                        piece.subject().label());
                hot++;
            } else {
                assertTrue(piece.rating() <= 0, piece.subject().label());
            }
        }
        assertTrue(hot > 0, "a contact of this example states a rating");
        for (int i = 1; i < each.study().worn().size(); i++) {
            assertTrue(each.study().worn().get(i - 1).bad() <= each.study().worn().get(i).bad());
        }
    }

    /**
     * A switch before one heating element, by Ohm's law: with E, R0 and the rest r of the loop, I = E / (r + R), and
     * I² R = P is the quadratic R² + (2 r - E² / P) R + r² = 0, whose lesser root is wanted. With a rating so high that
     * E² < 4 r P no resistance gives that heat.
     */
    @Tag("outside")
    @ParameterizedTest
    @CsvSource({"6, true", "10, true", "17, true", "19, false"})
    void theResistanceAtWhichASwitchPassesItsRatingIsTheRootOfAQuadratic(double rating, boolean comes,
            @TempDir Path folder) throws BadCall, IOException {
        Files.writeString(folder.resolve("loop.loom"), LOOP.replace("RATING", Double.toString(rating)));
        Project project = Example.at(folder);
        Schematic schematic = Schematic.of(project).getFirst();
        Condition vehicle = Example.vehicle(project.platforms().get("loop"), "1966");
        Mode mode = schematic.mode("on").orElseThrow();
        OperatingPoint good = new PointSolver(schematic, Optional.empty(), 50).solve(vehicle, mode);
        FaultStudy.Worn worn = FaultStudy.of(schematic, vehicle, mode, new Ratings(schematic, Ampacity.cfr())).worn()
                .stream().filter(each -> each.piece().subject().element().equals("sw")).findFirst().orElseThrow();
        double amps = good.amps(worn.piece());
        double rest = 12.6 / Math.abs(amps) - 0.05;
        double watts = rating * rating * 0.05;
        double half = 12.6 * 12.6 / watts / 2 - rest;
        assertEquals(comes, half * half >= rest * rest && half > 0, "the case is what its row says");
        assertEquals(comes, worn.hot().isPresent());
        if (comes) {
            assertEquals(half - Math.sqrt(half * half - rest * rest), worn.hot().getAsDouble(), 1e-6);
            assertEquals(worn.hot().getAsDouble() < worn.ohms(), worn.byRating());
        }
    }

    private static final String LOOP = """
            platform loop "Loop" {
                supply 12 V negative ground
                years 1966 .. 1966
                zone bay "Bay" ambient 30 C dry
                place board in bay
                ground body
                device battery "Battery" is battery at board on body
                device sw "Switch" is pull at board
                device heater "Heater" is heater at board on body
                mode on "On" {
                    set engine to stopped
                    set sw to on
                }
            }
            catalogue parts {
                source battery "Battery" {
                    type battery
                    voltage 12.6 V
                    resistance 8 mohm
                    polarity plus
                    pins plus, minus
                }
                switch pull "Switch" {
                    rating RATING A
                    pins line, load
                    states off, on
                    joins line to load through 50 mohm while on
                }
                load heater "Heater" {
                    voltage 12 V
                    resistance 2.4 ohm
                    pins 1
                }
            }
            drawing sheet of loop {
                datum board
                circuit 1 "Heater" RD {
                    wire a 4 mm2 from battery:plus to sw:line length 100 mm
                    wire b 4 mm2 from sw:load to heater:1 length 100 mm
                }
            }
            """;
}
