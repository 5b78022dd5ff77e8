// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.importing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.TextProject;
import org.loomwright.harness.link.Colours;
import org.loomwright.lang.LoomReader;

/** Rows become wires, or tell why not. */
class ImportWiresTest {

    private static final String HEAD = "drawing more of orrin fills front";

    @Test
    void goodRowsBecomeADrawingAndBadOnesTellWhy() throws BadCall {
        WireTable table = table("""
                Circuit,Function,Colour,Wire,Gauge,From,To
                12,"Dipped, left",GN/RD,12a,16 ga,J1:2,H1:1
                12,"Dipped, left",GN/RD,12b,1.5 mm2,J1:3,H2:1
                ,Horn,,13a,16 ga,J1:4,N1:1
                14,Fan,BK,14a,16,J1:5,M1:1
                15,Lamp,PURPLISH,15a,16 ga,J1:6,L1:1
                16,Aerial,BK,,18 ga,J1:7,A1:1
                """);
        ImportWires.Imported imported = make(table);
        assertEquals("""
                drawing more of orrin fills front {
                    circuit 12 "Dipped, left" GN/RD {
                        wire a 16 ga from J1:2 to H1:1
                        wire b 1.5 mm2 from J1:3 to H2:1
                    }
                    circuit 16 "Aerial" BK {
                        wire a 18 ga from J1:7 to A1:1
                    }
                }
                """, imported.text());
        assertEquals(3, imported.taken());
        assertEquals(List.of(2L, 3L, 4L, 5L, 6L, 7L), imported.results().stream().map(ImportWires.Result::row)
                .toList());
        assertEquals("the cell for circuit is empty", imported.results().get(2).refusal());
        assertTrue(imported.results().get(3).refusal().contains("a wire size needs its system"), imported.results().get(3).refusal());
        assertTrue(imported.results().get(4).refusal().contains("PURPLISH"), imported.results().get(4).refusal());
    }

    @Test
    void whatIsMadeCanBeRead() throws BadCall {
        ImportWires.Imported imported = make(table("""
                circuit;size;from;to
                1;16 ga;J1:1;H1:1
                """));
        String text = TextProject.SMALL + imported.text();
        assertEquals(1, TextProject.open(text).project().wiring("more").orElseThrow().wires().size());
    }

    @Test
    void aTableWithoutTheNeededColumnsTakesNothingAndSaysWhichIsMissing() throws BadCall {
        ImportWires.Imported imported = make(table("a,b\n1,2\n"));
        assertEquals("", imported.text());
        assertEquals("no column is chosen for circuit", imported.results().getFirst().refusal());
    }

    @Test
    void columnsAreGuessedByTheirHeadings() {
        assertEquals(Map.of(Field.CIRCUIT, 1, Field.SIZE, 0, Field.COLOUR, 2), Field.guess(List.of("AWG", "Circuit",
                "Color", "else")));
    }

    @Test
    void whatIsNoTableIsRefusedInOneLine() {
        assertThrows(BadCall.class, () -> table(""));
        assertThrows(BadCall.class, () -> table("a,\"b\n1,2"));
        assertThrows(BadCall.class, () -> WireTable.csv(new byte[] {0, 1, 2, (byte) 0xff}));
    }

    private static WireTable table(String text) throws BadCall {
        return WireTable.csv(text.getBytes(StandardCharsets.UTF_8));
    }

    private static ImportWires.Imported make(WireTable table) {
        return new ImportWires(LoomReader.create(), Colours.known(List.of())).make(table, Field.guess(table.heads()), HEAD);
    }
}
