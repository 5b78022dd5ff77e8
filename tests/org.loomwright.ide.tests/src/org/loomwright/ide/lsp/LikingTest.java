// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.DidChangeConfigurationCapabilities;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.InlayHintWorkspaceCapabilities;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.ide.Bench;
import org.loomwright.rules.standard.StandardRules;

/** What a client's settings change: units, and the second table for what a wire may carry. */
class LikingTest {

    private static final String FRONT = "front-1964.loom";

    private final String front;

    LikingTest() throws Exception {
        front = Files.readString(Bench.ORRIN.resolve(FRONT));
    }

    private static Client client() throws Exception {
        return new Client(Bench.ORRIN, StandardRules.engine(1));
    }

    private static ClientCapabilities asked() {
        ClientCapabilities can = new ClientCapabilities();
        WorkspaceClientCapabilities workspace = new WorkspaceClientCapabilities();
        workspace.setConfiguration(true);
        workspace.setDidChangeConfiguration(new DidChangeConfigurationCapabilities(true));
        workspace.setInlayHint(new InlayHintWorkspaceCapabilities(true));
        can.setWorkspace(workspace);
        return can;
    }

    private List<String> inlays(Client client) throws Exception {
        return client.server().getTextDocumentService().inlayHint(new InlayHintParams(client.id(FRONT), new Range(
                new Position(0, 0), new Position(200, 0)))).get(60, TimeUnit.SECONDS).stream()
                .map(each -> each.getLabel().getLeft()).toList();
    }

    private String hover(Client client) throws Exception {
        return client.server().getTextDocumentService().hover(new HoverParams(client.id(FRONT),
                Client.at(front, "wire a 14 ga from J1:1", 5))).get(60, TimeUnit.SECONDS).getContents().getRight()
                .getValue();
    }

    private static JsonObject settings(String name, Object value) {
        JsonObject section = new JsonObject();
        section.addProperty(name, value.toString());
        return section;
    }

    @Test
    void aClientIsAskedHowLengthsAreShown() throws Exception {
        try (Client client = client()) {
            client.setting(settings("unit", "in"));
            client.greet(asked());
            client.open(FRONT, front);
            client.untilTold(() -> client.refreshes() == 1);
            assertTrue(inlays(client).contains("cut 39.57 in"), () -> "1005 mm are 39.567 in at 25.4 mm each");
            assertTrue(hover(client).contains("1005 mm") && hover(client).contains("39.57 in"));
            assertTrue(client.registered().contains("workspace/didChangeConfiguration"));
            client.setting(new JsonObject());
            client.server().getWorkspaceService().didChangeConfiguration(new DidChangeConfigurationParams(
                    JsonNull.INSTANCE));
            client.untilTold(() -> client.refreshes() == 2);
            assertTrue(inlays(client).contains("cut 1005 mm"), "nothing is set any more");
        }
    }

    @Test
    void aClientThatTellsByItselfIsHeard() throws Exception {
        try (Client client = client().greet()) {
            client.open(FRONT, front);
            assertTrue(inlays(client).contains("cut 1005 mm"));
            assertFalse(hover(client).contains("for comparison"));
            client.server().getWorkspaceService().didChangeConfiguration(new DidChangeConfigurationParams(
                    Map.of("loomwright", Map.of("unit", "in", "ampacity", "both"))));
            assertTrue(inlays(client).contains("cut 39.57 in"));
            client.server().getWorkspaceService().didChangeConfiguration(new DidChangeConfigurationParams(
                    Map.of("other", Map.of("unit", "mm"))));
            assertTrue(inlays(client).contains("cut 39.57 in"), "the settings of others are not ours");
        }
    }

    @Test
    void aSettingThatIsNoneIsToldAndNothingElseBreaks() throws Exception {
        try (Client client = client().greet()) {
            client.open(FRONT, front);
            for (Object wrong : new Object[] {"furlong", 7, List.of(), Map.of("x", 1), true}) {
                client.server().getWorkspaceService().didChangeConfiguration(new DidChangeConfigurationParams(
                        Map.of("loomwright", Map.of("unit", wrong))));
            }
            client.server().getWorkspaceService().didChangeConfiguration(new DidChangeConfigurationParams("nonsense"));
            assertTrue(inlays(client).contains("cut 1005 mm"));
            assertEquals(5, client.messages().stream().filter(each -> each.startsWith(
                    "the setting loomwright.unit is ") && each.endsWith("; it can be mm or in")).count(),
                    () -> client.messages().toString());
        }
    }

    /** A person who starts an editor and searches before any file is open. */
    @Test
    void aSearchBeforeAnyFileIsOpenFindsWhatIsThere() throws Exception {
        try (Client client = client().greet()) {
            assertEquals("halogen", client.server().getWorkspaceService().symbol(new WorkspaceSymbolParams("halogen"))
                    .get(60, TimeUnit.SECONDS).getRight().getFirst().getName());
            client.open(FRONT, front.replace("of orrin", "of orin"));
            client.until(FRONT, all -> all.stream().anyMatch(each -> each.getMessage().getLeft().contains("orin")));
        }
    }

    @Test
    void aFileOpenedAfterASearchIsCheckedByAllRules(@TempDir Path folder) throws Exception {
        String broken = Files.readString(Bench.ROOT.resolve("docs/examples/broken/cavity-taken-twice.loom"));
        Files.createDirectories(folder.resolve("one/deep"));
        Files.writeString(folder.resolve("one/deep/a.loom"), broken);
        Files.createDirectories(folder.resolve("two"));
        Files.writeString(folder.resolve("two/b.loom"), "platform elsewhere\n");
        try (Client client = new Client(folder, StandardRules.engine(1)).greet()) {
            List<String> found = client.server().getWorkspaceService().symbol(new WorkspaceSymbolParams("e"))
                    .get(60, TimeUnit.SECONDS).getRight().stream().map(each -> each.getName()).toList();
            assertTrue(found.contains("elsewhere") && found.size() > 3, found::toString);
            client.open("one/deep/a.loom", broken);
            client.until("one/deep/a.loom", all -> all.stream().anyMatch(each -> "cavity-taken-twice".equals(
                    each.getCode().getLeft())));
        }
    }
}
