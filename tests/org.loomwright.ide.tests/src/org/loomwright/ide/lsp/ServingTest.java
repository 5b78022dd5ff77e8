// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WindowClientCapabilities;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.ide.Bench;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleBook;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;
import org.loomwright.rules.standard.StandardRules;

/** What the server answers over the protocol. */
class ServingTest {

    private static final String FRONT = "front-1964.loom";

    @TempDir
    private Path folder;
    private Path orrin;
    private String front;

    @BeforeEach
    void copy() throws Exception {
        orrin = folder.toRealPath().resolve("orrin");
        Files.createDirectories(orrin);
        try (Stream<Path> files = Files.list(Bench.ORRIN)) {
            for (Path file : files.toList()) {
                Files.copy(file, orrin.resolve(file.getFileName()));
            }
        }
        front = Files.readString(orrin.resolve(FRONT));
    }

    private Client client() throws Exception {
        return new Client(orrin, StandardRules.engine(1)).greet();
    }

    @Test
    void aSlipIsToldMendedAndForgotten() throws Exception {
        try (Client client = client()) {
            client.open(FRONT, front);
            Position at = Client.at(front, "datum bulkhead", 6);
            Range word = new Range(at, new Position(at.getLine(), at.getCharacter() + 8));
            client.change(FRONT, word, "bulkheda");
            Diagnostic told = client.until(FRONT, list -> !list.isEmpty()).getFirst();
            assertEquals("name-unknown", told.getCode().getLeft());
            assertEquals(word, told.getRange());
            assertEquals("loomwright", told.getSource());
            var actions = client.server().getTextDocumentService().codeAction(new CodeActionParams(client.id(FRONT),
                    told.getRange(), new CodeActionContext(List.of(told)))).get(60, TimeUnit.SECONDS);
            var action = actions.getFirst().getRight();
            TextEdit edit = action.getEdit().getChanges().get(client.uri(FRONT)).getFirst();
            assertEquals("bulkhead", edit.getNewText());
            assertEquals(List.of(told), action.getDiagnostics());
            client.change(FRONT, edit.getRange(), edit.getNewText());
            client.until(FRONT, List::isEmpty);
            assertTrue(client.leave().orderly());
        }
    }

    @Test
    void aClientThatShowsProgressHearsHowFarALongCheckIs() throws Exception {
        ClientCapabilities shows = new ClientCapabilities();
        shows.setWindow(new WindowClientCapabilities());
        shows.getWindow().setWorkDoneProgress(true);
        try (Client client = new Client(orrin, StandardRules.engine(1)).greet(shows)) {
            client.open(FRONT, front);
            long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(120);
            while (!client.progress().contains("end") && System.nanoTime() < deadline) {
                Thread.sleep(10);
            }
            List<String> heard = List.copyOf(client.progress());
            assertEquals(List.of("create", "begin"), heard.subList(0, 2), heard.toString());
            assertTrue(heard.contains("report"), heard.toString());
            assertEquals(heard.size() - 1, heard.indexOf("end"), heard.toString());
        }
        try (Client client = client()) {
            client.open(FRONT, front.replace("datum bulkhead", "datum bulkheda"));
            client.until(FRONT, list -> !list.isEmpty());
            assertEquals(List.of(), client.progress());
        }
    }

    /** A question about the whole workspace waits for the file that was opened right before it. */
    @Test
    void aSearchRightAfterOpeningFindsWhatIsThere() throws Exception {
        try (Client client = client()) {
            client.open(FRONT, front);
            assertEquals("halogen", client.server().getWorkspaceService().symbol(new WorkspaceSymbolParams("halogen"))
                    .get(60, TimeUnit.SECONDS).getRight().getFirst().getName());
        }
    }

    @Test
    void everyQuestionHasAnAnswer() throws Exception {
        try (Client client = client()) {
            client.open(FRONT, front);
            var texts = client.server().getTextDocumentService();
            Position wire = Client.at(front, "wire a 14 ga from J1:1", 5);
            assertTrue(texts.hover(new HoverParams(client.id(FRONT), wire)).get(60, TimeUnit.SECONDS).getContents()
                    .getRight().getValue().startsWith("wire 12a of front64"));
            Position housing = Client.at(front, "bulkhead12Plug", 3);
            List<? extends Location> definition = texts.definition(new DefinitionParams(client.id(FRONT), housing))
                    .get(60, TimeUnit.SECONDS).getLeft();
            assertEquals(client.uri("catalogue.loom"), definition.getFirst().getUri());
            Position datum = Client.at(front, "datum bulkhead", 8);
            List<? extends Location> references = texts.references(new ReferenceParams(client.id(FRONT), datum,
                    new ReferenceContext(true))).get(60, TimeUnit.SECONDS);
            assertTrue(references.size() > 10 && references.stream()
                    .anyMatch(each -> each.getUri().equals(client.uri("front-harness.loom"))));
            assertEquals("front64 Front lighting 1964", texts.documentSymbol(new DocumentSymbolParams(
                    client.id(FRONT))).get(60, TimeUnit.SECONDS).getFirst().getRight().getName());
            assertFalse(texts.foldingRange(new FoldingRangeRequestParams(client.id(FRONT)))
                    .get(60, TimeUnit.SECONDS).isEmpty());
            assertEquals(0, texts.semanticTokensFull(new SemanticTokensParams(client.id(FRONT)))
                    .get(60, TimeUnit.SECONDS).getData().size() % 5);
            Range all = new Range(new Position(0, 0), new Position(200, 0));
            assertTrue(texts.inlayHint(new InlayHintParams(client.id(FRONT), all)).get(60, TimeUnit.SECONDS)
                    .stream().anyMatch(each -> each.getLabel().getLeft().equals("cut 1005 mm")));
            assertEquals(List.of(), texts.formatting(new DocumentFormattingParams(client.id(FRONT),
                    new FormattingOptions(4, true))).get(60, TimeUnit.SECONDS), "it is canonical");
            List<CompletionItem> items = texts.completion(new CompletionParams(client.id(FRONT),
                    Client.at(front, "wire a 14 ga from J1:1 to", 21))).get(60, TimeUnit.SECONDS).getRight().getItems();
            assertTrue(items.stream().map(CompletionItem::getLabel).toList().contains("1"), "its own cavity is free");
            assertEquals("halogen", client.server().getWorkspaceService().symbol(new WorkspaceSymbolParams("halogen"))
                    .get(60, TimeUnit.SECONDS).getRight().getFirst().getName());
        }
    }

    @Test
    void aRenameReachesAllFilesAndRefusesATakenName() throws Exception {
        try (Client client = client()) {
            client.open(FRONT, front);
            var texts = client.server().getTextDocumentService();
            Position datum = Client.at(front, "datum bulkhead", 8);
            var edit = texts.rename(new RenameParams(client.id(FRONT), datum, "shelf")).get(60, TimeUnit.SECONDS);
            assertTrue(edit.getChanges().containsKey(client.uri("orrin.loom")));
            assertTrue(edit.getChanges().size() > 5, () -> edit.getChanges().keySet().toString());
            ExecutionException refused = assertThrows(ExecutionException.class, () -> texts.rename(
                    new RenameParams(client.id(FRONT), datum, "column")).get(60, TimeUnit.SECONDS));
            assertTrue(refused.getMessage().contains("the name column is taken by the place column of orrin"));
        }
    }

    @Test
    void anAnalysisThatThrowsIsToldAndTheServerGoesOn() throws Exception {
        BookRuleEngine broken = new BookRuleEngine(new RuleBook(List.of(new Broken())));
        try (Client client = new Client(orrin, broken).greet()) {
            client.open(FRONT, front);
            long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
            while (client.messages().isEmpty() && System.nanoTime() < deadline) {
                Thread.sleep(10);
            }
            assertEquals("the check of orrin failed (IllegalStateException: on purpose); a fault of Loomwright, "
                    + "which goes on without it", client.messages().getFirst());
            assertTrue(client.server().getTextDocumentService().hover(new HoverParams(client.id(FRONT),
                    Client.at(front, "wire a 14 ga from J1:1", 5))).get(60, TimeUnit.SECONDS) != null);
            Position at = Client.at(front, "datum bulkhead", 6);
            client.change(FRONT, new Range(at, at), "x");
            assertEquals("name-unknown", client.until(FRONT, list -> !list.isEmpty()).getFirst().getCode().getLeft());
        }
    }

    /** A rule with a fault. */
    private static final class Broken implements Rule<Target.OfHousing> {

        @Override
        public RuleInfo info() {
            return new RuleInfo("broken", "Does it throw?", Severity.ERROR, RuleInfo.Kind.ENGINEERING,
                    RuleInfo.Scope.HOUSING, "common practice");
        }

        @Override
        public Class<Target.OfHousing> target() {
            return Target.OfHousing.class;
        }

        @Override
        public void check(Target.OfHousing target, Findings findings) {
            throw new IllegalStateException("on purpose");
        }
    }

    @Test
    void twoClientsDoNotDisturbEachOther() throws Exception {
        try (Client one = client(); Client other = client()) {
            one.open(FRONT, front.replace("datum bulkhead", "datum nowhere"));
            other.open(FRONT, front);
            one.until(FRONT, list -> !list.isEmpty());
            other.until(FRONT, List::isEmpty);
            assertTrue(one.leave().orderly());
            assertTrue(other.server().getTextDocumentService().documentSymbol(new DocumentSymbolParams(
                    other.id(FRONT))).get(60, TimeUnit.SECONDS).size() == 1);
            Serving.End end = other.hangUp();
            assertFalse(end.orderly());
            assertEquals("the client closed its end without shutting down", end.complaint().orElseThrow());
        }
    }

    @Test
    void aDocumentThatIsNoFileHasNoAnswers() throws Exception {
        try (Client client = client()) {
            var texts = client.server().getTextDocumentService();
            var id = new org.eclipse.lsp4j.TextDocumentIdentifier("untitled:Untitled-1");
            assertEquals(null, texts.hover(new HoverParams(id, new Position(0, 0))).get(60, TimeUnit.SECONDS));
            assertEquals(List.of(), texts.documentSymbol(new DocumentSymbolParams(client.id("none.loom")))
                    .get(60, TimeUnit.SECONDS), "nor one that is not there");
            assertEquals(null, texts.hover(new HoverParams(client.id(FRONT), new Position(100_000, 100_000)))
                    .get(60, TimeUnit.SECONDS), "a place beyond the end is the end");
        }
    }

    @Test
    void positionsCountUtf16UnitsAndTakeEitherLineEnd() throws Exception {
        String text = "// \uD83D\uDE97 \u00e9\r\nplatform p {\r\n}\r\n";
        Files.writeString(orrin.resolve("other.loom"), text);
        try (Client client = client()) {
            client.open("other.loom", text);
            var symbol = client.server().getTextDocumentService().documentSymbol(new DocumentSymbolParams(
                    client.id("other.loom"))).get(60, TimeUnit.SECONDS).getFirst().getRight();
            assertEquals(new Range(new Position(1, 9), new Position(1, 10)), symbol.getSelectionRange());
            client.change("other.loom", new Range(new Position(0, 3), new Position(0, 5)), "car");
            client.change("other.loom", new Range(new Position(1, 9), new Position(1, 99)), "q {");
            symbol = client.server().getTextDocumentService().documentSymbol(new DocumentSymbolParams(
                    client.id("other.loom"))).get(60, TimeUnit.SECONDS).getFirst().getRight();
            assertEquals("q", symbol.getName());
        }
    }

}
