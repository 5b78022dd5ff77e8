// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.SolveCircuits;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.flow.CircuitPicture;
import org.loomwright.sheets.flow.CircuitPicture.Item;

/** The picture of a solved circuit: what it shows of the currents, and that it can be read. */
class CircuitPictureTest {

    private static final String SWITCHED = """
            platform p {
                supply 12 V negative ground
                years 1964 .. 1965
                zone cabin ambient 20 C
                place box in cabin
                ground body
                device battery is cell at box on body
                device knob "Lamp switch" is pull at box
                device lamp "Map lamp" is bulb at box on body
                mode lit {
                    set engine to stopped
                    set knob to on
                }
                mode dark {
                    set engine to stopped
                }
            }
            catalogue c {
                source cell {
                    voltage 12 V
                    resistance 8 mohm
                    polarity plus
                    pins plus, minus
                }
                switch pull {
                    states off, on
                    pins 1, 2
                    joins 1 to 2 while on
                }
                lamp bulb {
                    voltage 12 V
                    pins 1, case
                    joins 1 to case through 6 ohm
                }
                cable pvc {
                    temperature 85 C
                    size 18 awg
                }
            }
            drawing d of p {
                datum box
                circuit 1 BK {
                    wire a 18 awg from battery:plus to knob:1 length 1000 mm cable pvc
                }
                circuit 2 RD {
                    wire a 18 awg from knob:2 to lamp:1 length 1000 mm cable pvc
                }
            }
            """;

    @TempDir
    private Path folder;

    private List<OperatingPoint> points(String mode) throws Exception {
        return SolveCircuits.of(new Examples().text(folder, SWITCHED).project(), "1964", mode).getFirst().points();
    }

    private static Item item(CircuitPicture picture, String name) {
        Item item = picture.items().get(name);
        assertTrue(item != null, name + " is not in " + picture.items().keySet());
        return item;
    }

    /**
     * Ohm's law: 12 V over 8 mohm of the battery, 6 ohm of the lamp and 2 m of copper of 18 AWG, which has 20.95 ohm a
     * km at 20 C (National Bureau of Standards, Handbook 100, table 6). Contacts and warmth of the copper together are
     * held to a hundredth.
     */
    @Test
    @Tag("outside")
    void theCurrentOfALampIsThatOfOhmsLaw() throws Exception {
        CircuitPicture picture = CircuitPicture.of(points("lit").getFirst(), "2");
        double expected = 12 / (0.008 + 6 + 2 * 0.02095);
        assertEquals(expected, item(picture, "wire 2a of d").amps(), expected / 100);
        assertEquals(expected, item(picture, "wire 1a of d").amps(), expected / 100);
        assertTrue(item(picture, "wire 2a of d").words().startsWith("wire 2a RD 18 awg of d from knob:2 to lamp:1: "),
                item(picture, "wire 2a of d").words());
        assertTrue(picture.items().keySet().stream().anyMatch(each -> each.startsWith("battery")),
                "it begins at the battery: " + picture.items().keySet());
    }

    @Test
    void anOpenSwitchIsShownWhereNothingFlows() throws Exception {
        CircuitPicture picture = CircuitPicture.of(points("dark").getFirst(), "2");
        assertEquals(0, item(picture, "wire 2a of d").amps());
        assertTrue(item(picture, "wire 2a of d").words().endsWith("no current"));
        assertTrue(picture.items().values().stream().anyMatch(each -> each.words().equals("knob: open")),
                picture.items().toString());
        assertTrue(picture.drawing().marks().stream().anyMatch(each -> each instanceof Mark.Stroke stroke
                && stroke.dash() > 0));
    }

    @Test
    void aCircuitThatIsNotThereIsEmpty() throws Exception {
        CircuitPicture picture = CircuitPicture.of(points("lit").getFirst(), "77");
        assertTrue(picture.items().isEmpty());
        assertTrue(picture.drawing().marks().isEmpty());
    }

    /** Every wire with current of every circuit of an Orrin is drawn with it, from left to right, and lies inside. */
    @Test
    void everyCircuitOfTheExampleIsDrawnWhole() throws Exception {
        List<SolveCircuits.Solved> all = SolveCircuits.of(new Examples().example("orrin").project(), "1967 fogLamps",
                "dippedBeam");
        int drawn = 0;
        for (SolveCircuits.Solved solved : all) {
            for (OperatingPoint point : solved.points()) {
                for (String circuit : List.of("1", "12", "30", "35")) {
                    CircuitPicture picture = CircuitPicture.of(point, circuit);
                    for (Piece piece : point.schematic().pieces()) {
                        boolean own = piece.role() == Role.WIRE && point.conducts(piece) && piece.subject().wire()
                                .filter(each -> each.circuit().name().text().equals(circuit)).isPresent();
                        if (own && Math.abs(point.amps(piece)) > 1e-3) {
                            Item item = item(picture, "wire " + piece.subject().element() + " of "
                                    + piece.subject().owner());
                            assertEquals(Math.abs(point.amps(piece)), item.amps(), 1e-12);
                            drawn++;
                        }
                    }
                    for (Map.Entry<String, List<Point>> path : picture.paths().entrySet()) {
                        assertTrue(picture.items().containsKey(path.getKey()));
                        assertTrue(path.getValue().stream().allMatch(each -> each.x() >= 0 && each.y() >= 0
                                && each.x() <= picture.drawing().width() && each.y() <= picture.drawing().height()),
                                path.getKey());
                    }
                }
            }
        }
        assertTrue(drawn > 20, "wires with current: " + drawn);
    }
}
