// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.loomwright.app.BadCall;
import org.loomwright.app.MakeSheets;
import org.loomwright.app.TextProject;
import org.loomwright.harness.link.Project;

/** The bench's lists of a small harness, figure by figure. */
class SheetsTest {

    private static Project small() throws BadCall {
        return TextProject.open(TextProject.SMALL).project();
    }

    private static String text(Table table) {
        return new String(Csv.bytes(table), StandardCharsets.UTF_8).replace("\r\n", "\n");
    }

    private static Table table(String name) throws BadCall {
        return MakeSheets.of(small()).stream().filter(table -> table.name().equals(name)).findFirst().orElseThrow();
    }

    /**
     * 500 + 250 mm of route, 15 mm at each housing, 2 mm for the machine, up to the next 5 mm: 785 mm; to the fog lamp
     * 500 + 330 + 30 + 2: 865 mm. Both lie in the band of IPC/WHMA-A-620 from 0.3 to 1.5 m: -0/+50 mm.
     */
    @Test
    void theWireListHasARowForEachWayAWireIsMade() throws BadCall {
        assertEquals("""
                wire,circuit,function,colour,size,cable,cut length mm,tolerance minus mm,tolerance plus mm,length from,\
                print legend,from,from cavity,from terminal,to,to cavity,to terminal,vehicles
                1a,1,Lamp,BK,18 ga,pvc,785,0,50,route,'=LAMP,J1,1,tab63,H1,1,,not fogLamps
                1a,1,Lamp,BK,16 ga,pvc,785,0,50,route,'=LAMP,J1,1,tab63,H1,1,,fogLamps
                2a,2,"Fog, left",GN/RD,1.5 mm2,pvc,865,0,50,route,2a,J1,2,,F1,1,,fogLamps
                """, text(table("ours-wires.csv")));
    }

    @Test
    void thePartsListAddsUpWhatIsForTheSameVehicles() throws BadCall {
        assertEquals("""
                quantity,unit,sort,part,title,size,colour,where,vehicles
                2,pc,housing,plug2,"Plug, 2-way",,,J1 H1,all
                1,pc,housing,plug2,"Plug, 2-way",,,F1,fogLamps
                1,pc,terminal,(not stated),,,,H1:1,all
                2,pc,terminal,(not stated),,,,F1:1 J1:2,fogLamps
                1,pc,terminal,tab63,"Tab, 6.3 mm",,,J1:1,all
                0.87,m,cable,pvc,"PVC cable, ""thin"" wall",1.5 mm2,GN/RD,2a,fogLamps
                0.79,m,cable,pvc,"PVC cable, ""thin"" wall",16 ga,BK,1a,fogLamps
                0.79,m,cable,pvc,"PVC cable, ""thin"" wall",18 ga,BK,1a,not fogLamps
                0.46,m,covering,sleeve,"Sleeve, 10 mm",,,sleeve1,all
                """, text(table("ours-parts.csv")));
    }

    @Test
    void theKitListNamesWhatIsInTheBox() throws BadCall {
        assertEquals("""
                quantity,item,title,vehicles
                1,ours,Front,all
                2,plug2,"Plug, 2-way",fogLamps
                """, text(table("box-kit.csv")));
    }

    @Test
    void aLengthThatNobodyKnowsIsNotInvented() throws BadCall {
        Project project = TextProject.open(TextProject.SMALL.replace("lamp 250 mm", "lamp unknown")).project();
        List<Table> tables = MakeSheets.of(project);
        assertTrue(text(tables.getFirst()).contains("1a,1,Lamp,BK,18 ga,pvc,,,,unknown,"), text(tables.getFirst()));
        assertTrue(text(tables.get(1)).contains("0 and an unknown length,m,cable,pvc"), text(tables.get(1)));
    }

    @Test
    void aKitBringsTheListsOfItsHarnesses() throws BadCall {
        assertEquals(List.of("ours-wires.csv", "ours-parts.csv", "box-kit.csv"),
                MakeSheets.of(small(), "box").stream().map(Table::name).toList());
        assertEquals(List.of("ours-wires.csv", "ours-parts.csv"),
                MakeSheets.of(small(), "ours").stream().map(Table::name).toList());
        assertThrows(BadCall.class, () -> MakeSheets.of(small(), "front66"), "a drawing is not built");
    }

    @Test
    void namesThatDifferInCapitalsOnlyDoNotShareAFile() throws BadCall {
        Project project = TextProject.open(TextProject.SMALL
                + "harness Ours \"Another\" of orrin {\n    datum bulkhead\n}\n").project();
        List<String> names = MakeSheets.of(project).stream().map(Table::name).toList();
        assertEquals(List.of("ours-wires.csv", "ours-parts.csv", "Ours-wires-2.csv", "Ours-parts-2.csv", "box-kit.csv"),
                names);
    }
}
