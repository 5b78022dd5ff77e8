// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.sizing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.BadCall;
import org.loomwright.app.SizeCircuits;
import org.loomwright.electric.Example;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.survey.Inspectors;
import org.loomwright.electric.survey.Survey;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;

/** Sizes that would do: put into the text, they mend what was found, and one size less does not. */
class SizesTest {

    @TempDir
    Path folder;

    private static String text(String example) throws IOException {
        return Files.readString(Path.of(System.getProperty("loomwright.root")).normalize()
                .resolve("docs/examples/broken").resolve(example + ".loom"));
    }

    private Project project(String text) throws IOException, BadCall {
        return Example.at(Files.writeString(folder.resolve("altered.loom"), text));
    }

    private Sizes sizes(String text) throws IOException, BadCall {
        return SizeCircuits.of(project(text), "", Cancel.NEVER).getFirst().sizes();
    }

    private static Sizes.OfWire wire(Sizes sizes, String name) {
        return sizes.wires().stream().filter(each -> each.demand().wire().subject().element().equals(name)).findFirst()
                .orElseThrow();
    }

    private List<String> found(String text, String rule) throws IOException, BadCall {
        Schematic schematic = Schematic.of(project(text)).getFirst();
        return Survey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, Cancel.NEVER).of(rule).stream()
                .map(each -> each.fault().piece().subject().element()).toList();
    }

    @Test
    void theSmallestGaugeForACurrentIsOneThatTheRuleAcceptsAndTheNextSmallerIsNot() throws IOException, BadCall {
        String text = text("wire-overloaded");
        List<String> names = found(text, "wire-overloaded");
        assertEquals(1, names.size());
        Sizes.OfWire sized = wire(sizes(text), names.getFirst());
        assertTrue(sized.tooSmall());
        String line = text.lines().filter(each -> each.contains("wire " + names.getFirst().substring(
                names.getFirst().length() - 1) + " " + sized.now())).findFirst().orElseThrow();
        String mended = text.replace(line, line.replace(sized.now().toString(),
                sized.least().orElseThrow().toString()));
        assertEquals(List.of(), found(mended, "wire-overloaded"));
        assertFalse(wire(sizes(mended), names.getFirst()).tooSmall());
    }

    @Test
    void gaugesForADropKeepItTogether() throws IOException, BadCall {
        String text = text("drop-too-high");
        assertFalse(found(text, "drop-too-high").isEmpty());
        for (Sizes.OfWire each : sizes(text).wires()) {
            if (each.tooSmall()) {
                assertEquals("drop of Lamp", each.decides());
                String element = each.demand().wire().subject().element();
                String circuit = element.substring(0, element.length() - 1);
                int at = text.indexOf("circuit " + circuit + " ");
                text = text.substring(0, at) + text.substring(at).replaceFirst("wire a " + each.now(),
                        "wire a " + each.least().orElseThrow());
            }
        }
        assertEquals(List.of(), found(text, "drop-too-high"));
    }

    @Test
    void theLeastFuseOfTheFamilyCarriesItsLoadsAndDecidesTheGauge() throws IOException, BadCall {
        Sizes sizes = sizes(text("fuse-too-small-for-load"));
        Sizes.OfFuse fuse = sizes.fuses().getFirst();
        assertEquals(7.5, fuse.least().orElseThrow());
        assertEquals("20 ga", wire(sizes, "12a").least().orElseThrow().toString());
        Sizes own = sizes(text("fuse-too-small-for-load").replace("    switch pull", """
                    fuse blade12 "Blade fuse, 12 A" like blade10 {
                        rating 12 A
                    }
                    switch pull"""));
        assertEquals(12, own.fuses().getFirst().least().orElseThrow());
        assertEquals("least fuse at F1, 12 A", wire(own, "12a").decides());
    }

    @Test
    void aCableOfNoClassIsNotJudged() throws IOException, BadCall {
        Sizes.OfWire wire = wire(sizes(text("wire-overloaded").replaceAll("        temperature \\d+ C\n", "")), "12a");
        assertFalse(wire.judged());
        assertFalse(wire.tooSmall());
        assertEquals(Optional.empty(), wire.least());
    }
}
