// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.point;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.electric.Example;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.network.Schematic;

/** What must hold of currents whatever the figures: charge, length, temperature, and what a rating is not. */
class LawsOfNetworksTest {

    private static final String TEXT = """
            platform made "Made" {
                supply 12 V negative ground
                years 1964 .. 1964
                option fog "Fog lamp"
                zone bay "Bay" ambient 40 C dry
                place board "Board" in bay
                place front "Front" in bay
                position whole "All wires"
                ground body "Body"
                ground engine "Engine"
                strap lead from engine to body 2 mohm
                device battery "Battery" is battery at board on body
                device fuse "Fuse" is fuse at front
                device lamp "Lamp" is lamp at front on body
                device fogLamp "Fog lamp" is lamp at front on engine when fog
                mode lit "Lit" {
                    set engine to cruise
                }
            }
            drawing sheet1 "Sheet" of made fills whole {
                datum board
                trunk main {
                    breakout one at LENGTH mm
                }
                branch bFront from one to front 300 mm
                circuit 1 "Lamp" RD {
                    splice S1 on bFront at 100 mm
                    wire a 1.5 mm2 from battery:plus to fuse:line
                    wire b 1.5 mm2 from fuse:load to S1
                    wire c 1 mm2 from S1 to lamp:1
                    wire d 1 mm2 from S1 to fogLamp:1 when fog
                }
            }
            catalogue parts "Parts" {
                source battery "Battery" {
                    type battery
                    voltage 12.6 V
                    resistance 8 mohm
                    polarity plus
                    pins plus, minus
                }
                fuse fuse "Fuse" {
                    basis continuous
                    rating RATING A
                    resistance 6 mohm
                    pins line, load
                    protects line to load
                }
                lamp lamp "Lamp" {
                    voltage 13.2 V
                    current 4.2 A
                    pins 1
                }
            }
            """;

    @TempDir
    private Path folder;

    private Schematic made(int millimetres, int rating) throws IOException, BadCall {
        Path place = folder.resolve("made-" + millimetres + "-" + rating);
        Files.createDirectories(place);
        Files.writeString(place.resolve("made.loom"), TEXT.replace("LENGTH", "" + millimetres)
                .replace("RATING", "" + rating));
        return Schematic.of(Example.at(place)).getFirst();
    }

    private static OperatingPoint lit(Schematic schematic, String words, double celsius) {
        Mode mode = schematic.mode("lit").orElseThrow();
        return new PointSolver(schematic, Optional.empty(), celsius).solve(Example.vehicle(schematic.fitment()
                .platform(), words), mode);
    }

    private static double volts(OperatingPoint point) {
        Piece lamp = point.schematic().pieces().stream().filter(each -> each.role() == Role.LOAD).findFirst()
                .orElseThrow();
        return point.volts(lamp);
    }

    @Test
    void theDropGrowsWithLengthAndWithTemperature() throws Exception {
        double near = volts(lit(made(500, 10), "1964", 20));
        double far = volts(lit(made(2500, 10), "1964", 20));
        double hot = volts(lit(made(2500, 10), "1964", 80));
        assertTrue(near > 11 && near > far + 0.05, near + " V, " + far + " V");
        assertTrue(far > hot + 0.005, far + " V, " + hot + " V");
    }

    @Test
    void aRatingChangesNoCurrentWhereTheResistanceIsStated() throws Exception {
        OperatingPoint small = lit(made(500, 5), "1964 fog", 20);
        OperatingPoint large = lit(made(500, 30), "1964 fog", 20);
        assertEquals(small.currents().length, large.currents().length);
        for (int i = 0; i < small.currents().length; i++) {
            assertEquals(small.currents()[i], large.currents()[i], 0);
        }
    }

    @Test
    void whatFlowsIntoAJunctionFlowsOutOfIt() throws Exception {
        OperatingPoint point = lit(made(500, 10), "1964 fog", 20);
        double[] sums = new double[point.schematic().junctions().size()];
        double most = 0;
        for (Piece piece : point.schematic().pieces()) {
            sums[point.schematic().from(piece)] -= point.amps(piece);
            sums[point.schematic().to(piece)] += point.amps(piece);
            most = Math.max(most, Math.abs(point.amps(piece)));
        }
        assertTrue(most > 7, most + " A");
        for (double sum : sums) {
            assertEquals(0, sum, 1e-9);
        }
    }
}
