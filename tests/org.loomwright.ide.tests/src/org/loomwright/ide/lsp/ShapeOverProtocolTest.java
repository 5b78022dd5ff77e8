// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.InlayHintWorkspaceCapabilities;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.rules.standard.StandardRules;

/** Colours and folds as a client gets them. */
class ShapeOverProtocolTest {

    private static final String FILE = "a.loom";
    private static final String TEXT = """
            /* a comment
               of three
               lines */
            platform p "Test" {
                supply 12 V negative ground // the usual
                years 1964 .. 1965
                group body of saloon, coupe
                place box
                mode lit {
                    set engine to run
                }
                device d at box when saloon {
                    note "one"
                }
            }
            catalogue c {
                housing two {
                    cavities 1 .. 2
                }
            }
            drawing w of p {
                datum box
                trunk t {
                    breakout b at 100 mm
                }
                branch l from b to box 20 mm {
                    note "two"
                }
                connector A at box is two {
                    terminal 1 is ringM6
                }
                circuit 1 BK {
                    wire a 18 ga from A:1 to A:2 {
                        legend "1"
                    }
                }
            }
            harness h of p {
                covers w
            }
            kit k {
                contains h
            }
            practice q {
                limit gaugeMargin 5 % source "test"
            }
            """;

    @TempDir
    private Path folder;

    private Client client() throws Exception {
        Files.writeString(folder.toRealPath().resolve(FILE), TEXT);
        Client client = new Client(folder.toRealPath(), StandardRules.engine(1)).greet();
        client.open(FILE, TEXT);
        return client;
    }

    @Test
    void everyBlockAndTheCommentFold() throws Exception {
        try (Client client = client()) {
            Map<Integer, Integer> folds = new TreeMap<>();
            List<FoldingRange> told = client.server().getTextDocumentService().foldingRange(
                    new FoldingRangeRequestParams(client.id(FILE))).get(60, TimeUnit.SECONDS);
            told.forEach(each -> folds.put(each.getStartLine(), each.getEndLine()));
            Map<Integer, Integer> expected = new TreeMap<>(Map.of(0, 2));
            List<String> lines = TEXT.lines().toList();
            java.util.ArrayDeque<Integer> open = new java.util.ArrayDeque<>();
            for (int i = 3; i < lines.size(); i++) {
                if (lines.get(i).endsWith("{")) {
                    open.push(i);
                } else if (lines.get(i).strip().equals("}")) {
                    expected.put(open.pop(), i - 1);
                }
            }
            assertEquals(expected, folds);
            assertEquals(List.of("comment"), told.stream().filter(each -> each.getKind() != null
                    && each.getStartLine() == 0).map(FoldingRange::getKind).toList());
        }
    }

    /** Tokens are told as five numbers each: steps of line and column, length, type, modifiers (protocol 3.17). */
    @Test
    void everyWordHasItsTypeAndNoTokenRunsOverALine() throws Exception {
        try (Client client = client()) {
            List<Integer> data = client.server().getTextDocumentService().semanticTokensFull(
                    new SemanticTokensParams(client.id(FILE))).get(60, TimeUnit.SECONDS).getData();
            List<String> types = client.greeting().getCapabilities().getSemanticTokensProvider().getLegend()
                    .getTokenTypes();
            List<String> lines = TEXT.lines().toList();
            Map<String, Set<String>> seen = new TreeMap<>();
            int line = 0;
            int column = 0;
            int letters = 0;
            for (int i = 0; i < data.size(); i += 5) {
                line += data.get(i);
                column = data.get(i) == 0 ? column + data.get(i + 1) : data.get(i + 1);
                String word = lines.get(line).substring(column, column + data.get(i + 2));
                letters += word.replaceAll("\\s", "").length();
                seen.computeIfAbsent(types.get(data.get(i + 3)), key -> new TreeSet<>()).add(word.strip());
            }
            int written = TEXT.replaceAll("[\\s{}]", "").length();
            assertTrue(letters > written * 9 / 10, letters + " of " + written);
            assertTrue(seen.get("comment").containsAll(List.of("/* a comment", "of three", "lines */",
                    "// the usual")), seen::toString);
            assertTrue(seen.get("keyword").containsAll(List.of("platform", "supply", "datum", "when", "contains")),
                    seen::toString);
            assertTrue(seen.get("string").contains("\"Test\""), seen::toString);
            assertTrue(seen.get("number").containsAll(List.of("12", "100")), seen::toString);
        }
    }

    /** Who can ask for inlays again (protocol 3.17, workspace/inlayHint/refresh) is told when what flows is known. */
    @Test
    void whoCanAskAgainIsToldWhenCurrentsAreKnown() throws Exception {
        Files.writeString(folder.toRealPath().resolve(FILE), TEXT);
        WorkspaceClientCapabilities workspace = new WorkspaceClientCapabilities();
        workspace.setInlayHint(new InlayHintWorkspaceCapabilities(true));
        ClientCapabilities can = new ClientCapabilities();
        can.setWorkspace(workspace);
        try (Client again = new Client(folder.toRealPath(), StandardRules.engine(1)).greet(can);
                Client never = client()) {
            again.open(FILE, TEXT);
            InlayHintParams all = new InlayHintParams(again.id(FILE), new Range(new Position(0, 0),
                    new Position(99, 0)));
            for (Client each : List.of(never, again)) {
                assertFalse(each.server().getTextDocumentService().inlayHint(all).get(60, TimeUnit.SECONDS).isEmpty());
            }
            long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
            while (again.refreshes() == 0 && System.nanoTime() < deadline) {
                Thread.sleep(5);
            }
            assertEquals(1, again.refreshes());
            assertEquals(0, never.refreshes(), "it did not say that it understands");
        }
    }
}
