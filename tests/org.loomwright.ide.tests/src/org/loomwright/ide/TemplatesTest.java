// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Source;
import org.loomwright.ide.complete.Templates;
import org.loomwright.ide.complete.Templates.Fitting;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;

/** Templates for each construct, where it can begin. */
class TemplatesTest {

    private static final String FILE = "a.loom";
    /** One of each sort of block; {@code |} is where a line of it can begin. */
    private static final String BLOCKS = """
            |
            platform p {
                |
                device x {
                    |
                }
                mode m {
                    |
                }
            }
            catalogue c {
                |
                cable k {
                    |
                }
            }
            drawing d of p {
                |
                trunk t {
                    |
                }
                connector C {
                    |
                }
                circuit 1 BK {
                    |
                    wire a {
                        |
                    }
                }
            }
            harness h of p {
                |
            }
            kit k {
                |
            }
            practice q {
                |
            }
            """;
    /** What is wrong with a line that does not follow the grammar; names that a field stands for are unknown. */
    private static final Set<String> FORM = Set.of("syntax", "line-unreadable", "line-joined", "brace-missing",
            "brace-extra", "brace-line", "quote-open", "unit-missing", "unit-unknown", "unit-wrong", "number-absurd");

    private static List<Integer> places() {
        List<Integer> places = new ArrayList<>();
        for (int at = BLOCKS.indexOf('|'); at >= 0; at = BLOCKS.indexOf('|', at + 1)) {
            places.add(at - places.size());
        }
        return places;
    }

    @Test
    void everyLineThatCanBeginHasATemplateThatReads() {
        String text = BLOCKS.replace("|", "");
        Moment moment = Bench.of(FILE, text).moment();
        int all = 0;
        for (int place : places()) {
            List<Fitting> fitting = Services.templates(moment, FILE, place);
            assertEquals(Bench.texts(Services.complete(moment, FILE, place, Cancel.NEVER)).stream().sorted().toList(),
                    fitting.stream().map(each -> each.template().word()).sorted().toList());
            for (Fitting each : fitting) {
                String filled = text.substring(0, place) + each.template().text() + text.substring(place);
                Source source = Bench.READER.read(FILE, filled.getBytes(StandardCharsets.UTF_8));
                assertEquals(List.of(), source.problems().stream().filter(problem -> FORM.contains(problem.code()))
                        .map(problem -> problem.span().at() + " " + problem.message()).toList(),
                        () -> each.template().text());
                assertTrue(!each.template().meaning().isEmpty(), each.template().word());
                all++;
            }
        }
        assertTrue(all > 150, all + " templates at all places");
    }

    @Test
    void aTemplateIsASnippetWithItsFieldsInOrder() {
        Moment moment = Bench.of(FILE, "drawing d of p {\n    tr\n}\n").moment();
        Fitting trunk = Services.templates(moment, FILE, "drawing d of p {\n    tr".length()).getFirst();
        assertEquals("tr", moment.text(FILE).substring(trunk.where().offset(), trunk.where().end()));
        assertEquals("trunk ${1:name} {\n    breakout ${2:breakout} at ${3:300} mm\n    $0\n}",
                trunk.template().snippet());
    }

    @Test
    void thereIsNoneWhereALineHasBegun() {
        String text = "drawing d of p {\n    circuit 1 BK {\n        wire a 18 ga\n    } // wi\n}\n";
        Moment moment = Bench.of(FILE, text).moment();
        for (String before : List.of("wire a ", "        wi", "} // wi")) {
            assertEquals(Set.of(), Services.templates(moment, FILE, text.indexOf(before) + before.length()).stream()
                    .map(each -> each.template().word()).collect(Collectors.toSet()), before);
        }
    }
}
