// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.ide.hover.Hover;
import org.loomwright.ide.navigate.Rename;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Unit;

/** Where two platforms have a choice of one name, a condition means that of the platform that its line is about. */
class TwoPlatformsTest {

    private static final String FILE = "all.loom";
    private static final String TEXT = """
            platform a {
                years 1964 .. 1965
                option heater
                option radio
                place box
            }
            platform b {
                years 1970 .. 1973
                option heater
                place box
            }
            drawing d of b {
                datum box
                circuit 1 BK when heater {
                    splice S at box
                }
            }
            harness h of b {
                covers d
                datum box
            }
            kit k "Kit" revision "A" {
                contains h when heater
            }
            waive drop-too-high on d:S because "tried" when heater
            waive drop-too-high on k:S because "tried" when year <= 1971
            """;

    private final Bench bench = Bench.of(FILE, TEXT);

    @Test
    void theTextIsSound() {
        assertEquals(List.of(), bench.moment().findings());
    }

    @ParameterizedTest
    @ValueSource(strings = {"circuit 1 BK when ", "contains h when ", "on d:S because \"tried\" when "})
    void aChoiceLeadsToItsPlatform(String before) {
        assertEquals(TEXT.indexOf("option heater", TEXT.indexOf("platform b")) + "option ".length(),
                Services.definition(bench.moment(), FILE, TEXT.indexOf(before) + before.length()).getFirst().name()
                        .offset());
    }

    @Test
    void aRenamedChoiceIsRenamedWhereItIsMeant() {
        int option = TEXT.indexOf("heater", TEXT.indexOf("platform b"));
        Rename.Renamed renamed = Services.rename(bench.moment(), FILE, option, "warmAir", Cancel.NEVER);
        assertEquals("", renamed.refusal());
        String after = bench.edited(FILE, renamed.edits());
        assertEquals(List.of(), Bench.of(FILE, after).moment().findings());
        assertEquals(TEXT.split("heater", -1).length - 2, after.split("warmAir", -1).length - 1,
                "all but that of the other platform");
    }

    @Test
    void hoverAndInlayCountItsVehicles() {
        int condition = TEXT.indexOf("year <= 1971");
        Hover hover = Services.hover(bench.moment(), FILE, condition + "year <".length(), Cancel.NEVER).orElseThrow();
        assertTrue(hover.text().contains("4 of 8 vehicles"), hover::text);
        assertEquals(List.of("4 vehicles"), Services.inlays(bench.moment(), FILE, condition, condition + 12, Unit.MM,
                Cancel.NEVER).stream().map(each -> each.text()).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"contains h when ", "on d:S because \"tried\" when ", "on k:S because \"tried\" when "})
    void onlyItsChoicesAreProposed(String before) {
        List<String> choices = Bench.texts(Services.complete(bench.moment(), FILE, TEXT.indexOf(before)
                + before.length(), Cancel.NEVER));
        assertTrue(choices.contains("heater") && !choices.contains("radio"), choices::toString);
    }
}
