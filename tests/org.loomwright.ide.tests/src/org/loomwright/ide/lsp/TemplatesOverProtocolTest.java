// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.CompletionCapabilities;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionItemCapabilities;
import org.eclipse.lsp4j.CompletionItemInsertTextModeSupportCapabilities;
import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.InsertTextFormat;
import org.eclipse.lsp4j.InsertTextMode;
import org.eclipse.lsp4j.TextDocumentClientCapabilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.rules.standard.StandardRules;

/** Templates come to a client that can fill in their fields, and to no other. */
class TemplatesOverProtocolTest {

    private static final String TEXT = "platform p {\n    years 1964 .. 1965\n}\ndrawing d of p {\n    circuit 1 BK {\n"
            + "        wi\n    }\n}\n";

    @TempDir
    private Path folder;

    private List<CompletionItem> asked(ClientCapabilities can) throws Exception {
        Path root = folder.toRealPath();
        Files.writeString(root.resolve("a.loom"), TEXT);
        try (Client client = new Client(root, StandardRules.engine(1)).greet(can)) {
            client.open("a.loom", TEXT);
            return client.server().getTextDocumentService().completion(new CompletionParams(client.id("a.loom"),
                    Client.at(TEXT, "        wi\n", 10))).get(60, TimeUnit.SECONDS).getRight().getItems();
        }
    }

    private static ClientCapabilities can(boolean snippets) {
        CompletionItemCapabilities items = new CompletionItemCapabilities(snippets);
        items.setInsertTextModeSupport(new CompletionItemInsertTextModeSupportCapabilities(
                List.of(InsertTextMode.AsIs, InsertTextMode.AdjustIndentation)));
        TextDocumentClientCapabilities texts = new TextDocumentClientCapabilities();
        texts.setCompletion(new CompletionCapabilities(items));
        ClientCapabilities can = new ClientCapabilities();
        can.setTextDocument(texts);
        return can;
    }

    @Test
    void aClientThatKnowsSnippetsGetsThem() throws Exception {
        List<CompletionItem> items = asked(can(true));
        assertEquals(List.of("wire", "wire ..."), items.stream().map(CompletionItem::getLabel).toList());
        CompletionItem template = items.getLast();
        assertEquals(CompletionItemKind.Snippet, template.getKind());
        assertEquals(InsertTextFormat.Snippet, template.getInsertTextFormat());
        assertEquals(InsertTextMode.AdjustIndentation, template.getInsertTextMode());
        assertEquals("wire ${1:a} ${2:18} ga from ${3:J1}:${4:1} to ${5:J2}:${6:2}",
                template.getTextEdit().getLeft().getNewText());
        assertEquals(8, template.getTextEdit().getLeft().getRange().getStart().getCharacter());
        assertEquals("wire", template.getFilterText());
        assertTrue(items.getFirst().getSortText().compareTo(template.getSortText()) < 0, "the word alone comes first");
    }

    @Test
    void anotherDoesNot() throws Exception {
        for (ClientCapabilities can : List.of(can(false), new ClientCapabilities())) {
            assertEquals(List.of("wire"), asked(can).stream().map(CompletionItem::getLabel).toList());
        }
    }
}
