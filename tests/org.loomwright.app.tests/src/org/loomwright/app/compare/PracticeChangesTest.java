// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.FactComparer;
import org.loomwright.compare.change.Replay;
import org.loomwright.compare.facts.FactSheet;

/** How a shop judges is a part of the project: what changes in it is told. */
class PracticeChangesTest {

    private static final String TEXT = """
            platform orrin {
                supply 12 V negative ground
            }
            practice shop "How this shop judges" of orrin {
                treat clamp-spacing as note because "the clips are the customer's"
                limit spliceSpacing 55 mm source "sleeves"
            }
            """;

    private final Sides sides = new Sides();

    private List<String> told(String now) {
        FactSheet old = FactSheet.of(sides.project(Map.of("a.loom", TEXT)));
        FactSheet changed = FactSheet.of(sides.project(Map.of("a.loom", now)));
        Comparison comparison = new FactComparer().compare(old, changed);
        assertEquals(changed.content(), Replay.apply(old, comparison.changes()).content());
        return comparison.changes().stream().map(change -> change.aspect().words() + " | " + change.kind().words()
                + " | " + change.sentence()).toList();
    }

    @Test
    void aWeightALimitAndAReasonAreTold() {
        assertEquals(1, told(TEXT.replace("as note", "as silent")).size());
        assertEquals(1, told(TEXT.replace("55 mm", "60 mm")).size());
        assertEquals(List.of(), told(TEXT.replace("    treat", "\n    // why\n    treat")));
        assertEquals(List.of("text | renamed | practice shop renamed bench"),
                told(TEXT.replace("practice shop", "practice bench")));
        assertEquals(List.of("condition | removed | practice shop \"How this shop judges\" removed"),
                told(TEXT.substring(0, TEXT.indexOf("practice"))));
    }
}
