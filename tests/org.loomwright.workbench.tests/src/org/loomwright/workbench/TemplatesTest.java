// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.eclipse.jface.text.templates.Template;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Problem;
import org.loomwright.lang.Keywords;
import org.loomwright.workbench.editor.LoomTemplates;

/** Every template is text of the language once its gaps are filled, and each kind of block has one. */
class TemplatesTest {

    private static final Pattern GAP = Pattern.compile("\\$\\{([a-zA-Z0-9]+)}");
    private static final Map<String, String> FILLED = Map.of("cursor", "", "rule", "no-protection", "first", "1964",
            "last", "1967", "colour", "BK");
    private static final List<String> FIGURES = List.of("station", "length", "size", "number", "temperature",
            "diameter", "rating", "voltage", "power", "ohms");
    private static final Map<String, List<String>> WITHIN = Map.of(
            "catalogue c {\n%s\n}\n", List.of("cable", "fuse", "lamp", "switch"),
            "platform p {\n%s\n}\n", List.of("zone", "place", "group", "option", "upgrade", "never", "mode", "device"),
            "harness h of p {\n%s\n}\n", List.of("trunk", "branch", "connector", "circuit", "stud"),
            "harness h of p {\ncircuit 1 {\n%s\n}\n}\n", List.of("wire", "splice"));

    @Test
    void eachIsReadWithoutAProblem() {
        Map<String, List<String>> wrong = new TreeMap<>();
        for (Template each : LoomTemplates.all()) {
            String text = GAP.matcher(each.getPattern()).replaceAll(gap -> FIGURES.contains(gap.group(1)) ? "12"
                    : FILLED.getOrDefault(gap.group(1), "x1"));
            String around = WITHIN.entrySet().stream().filter(entry -> entry.getValue().contains(each.getName()))
                    .map(Map.Entry::getKey).findFirst().orElse("%s\n");
            String source = String.format(around, text);
            List<String> problems = Shared.rooms().reader().read("a.loom", source.getBytes(StandardCharsets.UTF_8))
                    .problems().stream().map(Problem::message).toList();
            if (!problems.isEmpty()) {
                wrong.put(source, problems);
            }
        }
        assertEquals(Map.of(), wrong);
    }

    @Test
    void whatStandsOutsideBlocksHasOne() {
        TreeSet<String> missing = new TreeSet<>(Keywords.BLOCKS);
        LoomTemplates.all().forEach(each -> missing.remove(each.getName()));
        assertEquals(new TreeSet<>(), missing);
        assertTrue(LoomTemplates.all().size() > 20);
    }
}
