// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.loomwright.ide.outline.Colouring;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Slot.Sort;
import org.loomwright.lang.words.Word;
import org.loomwright.quantity.Cancel;

/** The services know every word of the language: a word that the grammar gains has to be written here or in an example. */
class KeywordsTest {

    private static final Path GRAMMAR = Bench.ROOT.resolve(
            "bundles/org.loomwright.lang/src/org/loomwright/lang/Loom.xtext");
    private static final int TIMES = 2;
    /** Words that the examples have no use for. */
    private static final String OTHERS = """
            platform p {
                place box
            }
            catalogue c {
                breaker b {
                    breaking 1 kA
                    mass 20 g
                    called "trip"
                }
                housing h {
                    height 20 mm
                }
                terminal t {
                    pull 60 N
                }
            }
            drawing d of p {
                datum box
                trunk t {
                    breakout a at 100 mm
                    breakout b at 200 mm
                    slack before b at most 10 mm
                }
                circuit 1 BK {
                    wire a 14 ga length 900 mm measured to tip
                    wire b 14 ga length 900 mm measured to face
                }
            }
            harness h of p {
                movement 10 mm at box
            }
            practice q {
                treat no-protection as silent because "test"
                treat no-protection as warning because "test"
            }
            """;

    /** The words of the grammar, marks left out. */
    private static Set<String> ofGrammar() throws IOException {
        String text = Files.readString(GRAMMAR).replaceAll("(?s)/\\*.*?\\*/", "").replaceAll("//[^\n]*", "");
        String parser = text.substring(0, text.indexOf("terminal "));
        Set<String> words = new TreeSet<>();
        Matcher found = Pattern.compile("'([A-Za-z]+)'").matcher(parser);
        while (found.find()) {
            words.add(found.group(1));
        }
        return words;
    }

    private static List<Bench> examples() throws IOException {
        List<Bench> all = new ArrayList<>(List.of(Bench.of("others.loom", OTHERS)));
        try (Stream<Path> folders = Files.list(Bench.ROOT.resolve("docs/examples"))) {
            folders.filter(Files::isDirectory).sorted().forEach(folder -> all.add(Bench.folder(folder)));
        }
        return all;
    }

    /** At each place where an example has a word of the language, that word is offered and coloured as one. */
    @Test
    void everyWordOfTheGrammarIsOfferedWhereItCanStand() throws IOException {
        Map<String, Integer> asked = new HashMap<>();
        Set<String> offered = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        for (Bench bench : examples()) {
            for (String file : bench.files()) {
                Set<Integer> coloured = new TreeSet<>();
                Services.colours(bench.moment(), file).stream().filter(each -> each.tint() == Colouring.Tint.KEYWORD)
                        .forEach(each -> coloured.add(each.offset()));
                for (Line line : bench.moment().words(file).lines()) {
                    for (Word word : line.words()) {
                        if (word.slot().sort() == Sort.KEYWORD && line.read()
                                && asked.merge(word.text() + " " + word.slot().rule(), 1, Integer::sum) <= TIMES) {
                            boolean there = Bench.texts(Services.complete(bench.moment(), file, word.offset(),
                                    Cancel.NEVER)).contains(word.text());
                            if (there && coloured.contains(word.offset())) {
                                offered.add(word.text());
                            } else {
                                wrong.add(file + ":" + bench.moment().lines(file).line(word.offset()) + " "
                                        + word.text());
                            }
                        }
                    }
                }
            }
        }
        assertEquals(List.of(), wrong);
        Set<String> missing = ofGrammar();
        assertTrue(missing.size() > 100, missing::toString);
        missing.removeAll(offered);
        assertEquals(Set.of(), missing, "words of the grammar that no example has, or that are never offered");
    }
}
