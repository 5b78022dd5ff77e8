// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How {@code electric} is called, and what it says. */
class ElectricCallTest {

    @TempDir
    private Path folder;

    private Call call(String example, String... more) throws Exception {
        return of("electric", example, more);
    }

    private Call of(String command, String example, String... more) throws Exception {
        Files.copy(Path.of(System.getProperty("loomwright.root")).normalize().resolve("docs/examples/broken")
                .resolve(example + ".loom"), folder.resolve("demo.loom"));
        String[] args = new String[more.length + 2];
        args[0] = command;
        args[1] = ".";
        System.arraycopy(more, 0, args, 2, more.length);
        return Call.in(folder, args);
    }

    @Test
    void oneLineAModeWithoutMore() throws Exception {
        String out = call("drop-too-high").isFine().out();
        assertTrue(out.contains("night "), out);
        assertTrue(out.contains("keyOffTurning"), out);
    }

    @Test
    void theSizesThatWouldDoInEveryVehicle() throws Exception {
        String out = call("wire-too-hot", "--sizes").isFine().out();
        assertTrue(out.startsWith("Demo: all 2 vehicles; with harness front\n"), out);
        assertTrue(out.lines().anyMatch(line -> line.matches("90c of front +20 ga +14\\.35 +14 ga +too small now .*")),
                out);
        assertTrue(out.contains(" networks solved\n"), out);
        assertTrue(out.contains("Nothing here complies with a law"), out);
    }

    @Test
    void theSizesForMachines() throws Exception {
        JsonObject json = JsonParser.parseString(call("wire-too-hot", "--sizes", "--format", "json").isFine().out())
                .getAsJsonObject();
        JsonObject sizes = json.getAsJsonArray("sizes").get(0).getAsJsonObject();
        JsonObject wire = sizes.getAsJsonArray("wires").asList().stream().map(each -> each.getAsJsonObject())
                .filter(each -> each.get("element").getAsString().equals("front:90c")).findFirst().orElseThrow();
        assertEquals("14 ga", wire.get("least").getAsString());
        assertTrue(wire.get("tooSmall").getAsBoolean());
        assertEquals(10, sizes.getAsJsonArray("fuses").get(0).getAsJsonObject().get("leastAmps").getAsDouble());
    }

    @Test
    void whatIsWrongInEveryVehicleWithWhatWasSolved() throws Exception {
        String out = call("wire-too-hot", "--every").isFine().out();
        assertTrue(out.startsWith("Demo: every vehicle; with harness front\n"), out);
        assertTrue(out.contains("\nwire-too-hot\n  wire 90c of 20 ga gets hotter"), out);
        assertTrue(out.contains("\n    try: fit a wire of at least 14 ga"), out);
        assertTrue(out.lines().anyMatch(line -> line.matches("2 vehicles in \\d+ modes: \\d+ blocks, \\d+ assignments,"
                + " \\d+ networks solved")), out);
    }

    @Test
    void whatIsWrongInEveryVehicleForMachines() throws Exception {
        JsonObject json = JsonParser.parseString(call("wire-too-hot", "--every", "--format", "json").isFine().out())
                .getAsJsonObject().getAsJsonArray("surveys").get(0).getAsJsonObject();
        assertEquals(2, json.get("vehicles").getAsInt());
        JsonObject hot = json.getAsJsonArray("faults").asList().stream().map(each -> each.getAsJsonObject())
                .filter(each -> each.get("rule").getAsString().equals("wire-too-hot")).findFirst().orElseThrow();
        assertEquals("front:90c", hot.get("element").getAsString());
        assertTrue(hot.get("exact").getAsBoolean());
    }

    @Test
    void everyVehicleIsNotOneVehicle() throws Exception {
        call("wire-too-hot", "--every", "--vehicle", "1968").isRefused("--every looks at all vehicles");
    }

    @Test
    void sizesAreOfAllModes() throws Exception {
        call("wire-too-hot", "--sizes", "--mode", "night").isRefused("--sizes looks at all modes");
    }

    @Test
    void aVehicleThatDoesNotExistIsRefused() throws Exception {
        call("wire-too-hot", "--sizes", "--vehicle", "1975").isRefused("1975");
    }

    @Test
    void aModeThatDoesNotExistIsRefusedWithTheNearest() throws Exception {
        call("wire-too-hot", "--mode", "nigth").isRefused("night");
    }

    @Test
    void aPlotNeedsAMode() throws Exception {
        call("wire-too-hot", "--plot", "out.svg").isRefused("--mode");
    }

    /** Brighter lamps on the light switch against the same lamps on the relays of the kit, and a lost charge lamp. */
    @Test
    void upgradesOfAVehicleBeforeAndAfter() throws Exception {
        String out = Call.in(Path.of(System.getProperty("loomwright.root")).normalize(), "electric",
                "docs/examples/orrin", "--vehicle", "1968 coupe", "--upgrades").isFine().out();
        String factory = out.substring(out.indexOf("\nhalogen, as the factory wired it: "));
        factory = factory.substring(0, factory.indexOf("\n\n"));
        assertTrue(factory.contains("gains wire-overloaded: wire 13a"), factory);
        assertTrue(factory.contains("gains lamp-too-dim: Left headlamp, dip"), factory);
        String kit = out.substring(out.indexOf("\nhalogen, with kit frontKit: "));
        kit = kit.substring(0, kit.indexOf("\n\n"));
        assertTrue(!kit.contains("wire-overloaded") && !kit.contains("drop-too-high: Left headlamp")
                && !kit.contains("lamp-too-dim: Left headlamp"), kit);
        String fan = out.substring(out.indexOf("\nelectricFan, as the factory wired it: "));
        assertTrue(fan.substring(0, fan.indexOf("\n\n")).contains("gains no-excitation"), fan);
    }

    /** A check keeps a budget and says what it left out; without one the same answer is not taken from before. */
    @Test
    void aCheckSolvesEveryVehicleWhenAsked() throws Exception {
        String within = of("check", "circuits-bounded", "--fail-on", "error").isFine().out();
        assertTrue(within.contains("[circuits-bounded]: bounded: not every vehicle's currents"), within);
        String every = Call.in(folder, "check", ".", "--every").isFine().out();
        assertTrue(!every.contains("circuits-bounded]"), every);
        assertEquals(within, Call.in(folder, "check", ".", "--fail-on", "error").isFine().out());
    }

    /** Without modes nobody knows what flows: a terminal is held against the fuse before it. */
    @Test
    void whereNothingIsComputedATerminalIsHeldAgainstItsFuse() throws Exception {
        call("terminal-overloaded").isFine();
        String text = Files.readString(folder.resolve("demo.loom"));
        Files.writeString(folder.resolve("demo.loom"), text.replaceAll("(?s)    mode keyOff .*?\n    }\n    mode night "
                + ".*?\n    }\n", ""));
        String out = Call.in(folder, "check", ".", "--no-cache", "--fail-on", "error").isFine().out();
        assertTrue(out.contains("warning[terminal-overloaded]: contact H1:feed of 3 A stands behind fuse F1 of 10 A"),
                out);
    }

    @Test
    void aVehicleIsNamedByBareChoicesOrByACondition() throws Exception {
        String bare = call("circuits-bounded", "--vehicle", "1967 roof not nose").isFine().out();
        assertEquals(bare, Call.in(folder, "electric", ".", "--vehicle", "year = 1967 and roof and not nose").isFine()
                .out());
        assertTrue(bare.startsWith("Demo: 1967, roof; "), bare);
        String later = Call.in(folder, "electric", ".", "--vehicle", "year > 1966 and roof").isFine().out();
        assertTrue(later.startsWith("Demo: 1967, roof; "), later);
    }

    /** What each piece on the way loses adds up to what the source gives, in text and for machines. */
    @Test
    void theWayOfALoadPieceByPiece() throws Exception {
        String out = call("drop-too-high", "--mode", "night", "--circuit", "12").isFine().out();
        assertTrue(out.contains("from source to ground by way of Lamp"), out);
        assertTrue(out.lines().anyMatch(line -> line.matches("together +12\\d{3} +of 12\\.\\d{3} V *")), out);
        JsonObject lamp = JsonParser.parseString(Call.in(folder, "electric", ".", "--mode", "night", "--circuit", "12",
                "--format", "json").isFine().out()).getAsJsonObject().getAsJsonArray("fitted").get(0).getAsJsonObject()
                .getAsJsonArray("modes").get(0).getAsJsonObject().getAsJsonArray("pieces").asList().stream()
                .map(each -> each.getAsJsonObject()).filter(each -> each.has("way")).findFirst().orElseThrow();
        double sum = lamp.getAsJsonArray("way").asList().stream().mapToDouble(each -> each.getAsJsonObject()
                .get("drop").getAsDouble()).sum();
        assertEquals(lamp.get("lostInFeed").getAsDouble() + lamp.get("lostInReturn").getAsDouble()
                + lamp.get("volts").getAsDouble(), sum, 1e-6);
    }

    @Test
    void upgradesForMachines() throws Exception {
        JsonObject json = JsonParser.parseString(Call.in(Path.of(System.getProperty("loomwright.root")).normalize(),
                "electric", "docs/examples/orrin", "--vehicle", "1968 coupe", "--upgrades", "--format", "json").isFine()
                .out()).getAsJsonObject();
        JsonObject halogen = json.getAsJsonArray("upgrades").get(0).getAsJsonObject();
        assertEquals("halogen", halogen.get("upgrade").getAsString());
        JsonObject lamp = halogen.getAsJsonObject("leastLampShare");
        assertTrue(lamp.get("after").getAsDouble() < lamp.get("before").getAsDouble(), halogen.toString());
        assertTrue(halogen.getAsJsonArray("gained").asList().stream().anyMatch(each -> each.getAsJsonObject()
                .get("rule").getAsString().equals("wire-overloaded")), halogen.toString());
    }

    @Test
    void aVehicleWithoutUpgradesHasNothingToCompare() throws Exception {
        call("wire-too-hot", "--upgrades").isRefused("no upgrade");
    }

    @Test
    void upgradesAreOfAllModes() throws Exception {
        call("wire-too-hot", "--upgrades", "--mode", "night").isRefused("--upgrades looks at all modes");
    }
}
