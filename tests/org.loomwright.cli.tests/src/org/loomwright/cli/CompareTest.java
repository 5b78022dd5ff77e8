// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code compare} as it is called. */
class CompareTest {

    private static final String PROJECT = """
            platform orrin "Orrin 1200" {
                years 1964 .. 1971
                position front
                place bulkhead
                place lamp
            }
            drawing front64 "Front 1964" of orrin fills front {
                tolerance ± 2 mm
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 200 mm
            }
            harness ours "Front" of orrin fills front {
                covers front64
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 250 mm
            }
            kit box "Front kit" revision "A" of orrin {
                contains ours
            }
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void sides() throws IOException {
        side("old", PROJECT);
        side("same", "// The same.\n" + PROJECT);
        side("short", PROJECT.replace("lamp 250 mm", "lamp 190 mm"));
        side("longer", PROJECT.replace("lamp 250 mm", "lamp 260 mm"));
    }

    private void side(String name, String text) throws IOException {
        Files.createDirectory(folder.resolve(name));
        Files.writeString(folder.resolve(name).resolve("all.loom"), text);
    }

    @Test
    void noChangeIsFine() {
        assertEquals("same: no change\n", Call.in(folder, "compare", "old", "same").isFine().out());
    }

    @Test
    void aChangeWithoutObjectionIsFine() {
        String out = Call.in(folder, "compare", "old", "longer").isFine().out();
        assertTrue(out.startsWith("ours: 1 change that vehicles feel\n"), out);
        assertTrue(out.contains("branch b1 of ours: length 250 mm -> 260 mm\n      every vehicle; longer/all.loom:21"),
                out);
    }

    @Test
    void aFindingThatIsGainedIsObjectedTo() {
        Call call = Call.in(folder, "compare", "old", "short");
        assertEquals(Exit.FINDINGS, call.code(), call.out());
        assertTrue(call.out().lines().findFirst().orElseThrow().contains("gained"), call.out());
        assertTrue(call.out().lines().findFirst().orElseThrow().contains("no longer fits at lamp"), call.out());
    }

    @Test
    void aFindingThatIsLostIsNot() {
        Call call = Call.in(folder, "compare", "short", "old");
        assertEquals(Exit.FINE, call.code(), call.out());
    }

    @Test
    void whatIsSoldStaysFrozen() {
        Call call = Call.in(folder, "compare", "--sold", "old", "short");
        assertEquals(Exit.FINDINGS, call.code(), call.out());
        assertTrue(call.out().contains("error[interface-changed]"), call.out());
    }

    @Test
    void filesAreComparedAsFolders() {
        String out = Call.in(folder, "compare", "old/all.loom", "longer/all.loom").isFine().out();
        assertTrue(out.contains("length 250 mm -> 260 mm"), out);
    }

    @Test
    void quietPrintsTheVerdictAlone() {
        assertEquals(1, Call.in(folder, "compare", "--quiet", "old", "longer").isFine().out().lines().count());
    }

    @Test
    void programsGetADocument() {
        Call call = Call.in(folder, "compare", "old", "short", "--format", "json");
        JsonObject json = JsonParser.parseString(call.out()).getAsJsonObject();
        assertEquals("compare", json.get("command").getAsString());
        assertFalse(json.get("passes").getAsBoolean());
        JsonObject change = json.getAsJsonArray("changes").get(0).getAsJsonObject();
        assertEquals("geometry", change.get("class").getAsString());
        JsonObject delta = change.getAsJsonArray("deltas").get(0).getAsJsonObject();
        assertEquals("250 mm", delta.getAsJsonArray("was").get(0).getAsJsonObject().get("value").getAsString());
        assertEquals("190 mm", delta.getAsJsonArray("is").get(0).getAsJsonObject().get("value").getAsString());
        assertTrue(json.getAsJsonArray("consequences").size() >= 2, call.out());
    }

    @Test
    void wrongCallsAreRefused() {
        Call.in(folder, "compare", "old").isRefused("two sides are needed");
        Call.in(folder, "compare", "old", "nowhere").isRefused("'nowhere' is no file and no folder");
        Call.in(folder, "compare", "old", "same", "short").isRefused("one argument too many");
        Call.in(folder, "compare", "old", "same", "--format", "csv").isRefused("--format");
    }
}
