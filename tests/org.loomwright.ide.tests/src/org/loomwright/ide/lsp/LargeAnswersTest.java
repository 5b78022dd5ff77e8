// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.FoldingRangeCapabilities;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.ide.LargeText;
import org.loomwright.rules.standard.StandardRules;

/** However much there would be to say, an answer has no more in it than an editor can show. */
class LargeAnswersTest {

    private static final String FILE = "a.loom";
    private static final Range ALL = new Range(new Position(0, 0), new Position(100_000, 0));

    @TempDir
    private Path folder;

    private Client client(String text, ClientCapabilities can) throws Exception {
        Files.writeString(folder.toRealPath().resolve(FILE), text);
        Client client = new Client(folder.toRealPath(), StandardRules.engine(1)).greet(can);
        client.open(FILE, text);
        return client;
    }

    /** A wire that ends nowhere on each of 1,500 lines, and 700 places. */
    private static String wrong() {
        StringBuilder text = new StringBuilder("platform p {\n    years 1964 .. 1965\n");
        for (int i = 0; i < 700; i++) {
            text.append("    place spot").append(i).append('\n');
        }
        text.append("    device d at \n}\ndrawing d of p {\n    datum spot1\n    circuit 1 BK {\n");
        for (int i = 0; i < 1_500; i++) {
            text.append("        wire w").append(i).append(" 18 ga from X:1 to Y:1\n");
        }
        return text.append("    }\n}\n").toString();
    }

    private static CompletionList complete(Client client, Position position) throws Exception {
        return client.server().getTextDocumentService().completion(new CompletionParams(client.id(FILE), position))
                .get(60, TimeUnit.SECONDS).getRight();
    }

    @Test
    void findingsProposalsAndActionsAreBounded() throws Exception {
        String text = wrong();
        try (Client client = client(text, new ClientCapabilities())) {
            List<Diagnostic> told = client.until(FILE, list -> list.size() > 1_000);
            assertEquals(1_001, told.size());
            assertTrue(told.getLast().getMessage().getLeft()
                    .matches("[0-9]+ more findings of this file are not shown; .*"),
                    told.getLast()::toString);
            assertEquals(DiagnosticSeverity.Error, told.getFirst().getSeverity(), "the worst first");
            Position place = Client.at(text, "device d at ", 12);
            CompletionList some = complete(client, place);
            assertEquals(500, some.getItems().size());
            assertTrue(some.isIncomplete(), "the client has to ask again");
            client.change(FILE, new Range(place, place), "spot69");
            CompletionList few = complete(client, new Position(place.getLine(), place.getCharacter() + 6));
            assertFalse(few.isIncomplete());
            assertEquals("spot69", few.getItems().getFirst().getLabel());
            assertTrue(few.getItems().size() <= 12, () -> few.getItems().size() + " proposals");
            int actions = client.server().getTextDocumentService().codeAction(new CodeActionParams(client.id(FILE), ALL,
                    new CodeActionContext(List.of()))).get(60, TimeUnit.SECONDS).size();
            assertTrue(actions > 50 && actions < 500, actions + " actions");
        }
    }

    @Test
    void foldsInlaysAndColoursOf10000LinesAreBounded() throws Exception {
        FoldingRangeCapabilities folding = new FoldingRangeCapabilities();
        folding.setRangeLimit(300);
        TextDocumentClientCapabilities texts = new TextDocumentClientCapabilities();
        texts.setFoldingRange(folding);
        ClientCapabilities can = new ClientCapabilities();
        can.setTextDocument(texts);
        try (Client client = client(LargeText.of(10_000), can)) {
            assertEquals(300, client.server().getTextDocumentService().foldingRange(
                    new FoldingRangeRequestParams(client.id(FILE))).get(60, TimeUnit.SECONDS).size());
            assertEquals(2_000, client.server().getTextDocumentService().inlayHint(
                    new InlayHintParams(client.id(FILE), ALL)).get(60, TimeUnit.SECONDS).size());
            Range screen = new Range(new Position(5_000, 0), new Position(5_050, 0));
            List<Integer> some = client.server().getTextDocumentService().semanticTokensRange(
                    new SemanticTokensRangeParams(client.id(FILE), screen)).get(60, TimeUnit.SECONDS).getData();
            assertTrue(some.get(0) >= 4_999 && some.get(0) <= 5_000, () -> "begins in line " + some.get(0));
            assertTrue(some.size() / 5 < 50 * 20, () -> some.size() / 5 + " words on 50 lines");
            List<Integer> all = client.server().getTextDocumentService().semanticTokensFull(
                    new SemanticTokensParams(client.id(FILE))).get(60, TimeUnit.SECONDS).getData();
            assertTrue(all.size() / 5 > 40_000, () -> all.size() / 5 + " words");
        }
    }
}
