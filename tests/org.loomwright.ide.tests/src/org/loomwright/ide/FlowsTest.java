// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.loomwright.app.SolveCircuits;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WireView;
import org.loomwright.ide.hover.Hover;
import org.loomwright.ide.inlay.Inlay;
import org.loomwright.ide.project.Flows;
import org.loomwright.ide.project.Moment;
import org.loomwright.ide.session.Listener;
import org.loomwright.ide.session.Pace;
import org.loomwright.ide.session.Workspace;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Unit;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** What hover tells of currents and voltages is what the solver gives, and nobody waits for it. */
class FlowsTest {

    private static final String CABIN = """
            platform p {
                supply 12 V negative ground
                years 1964 .. 1965
                zone cabin ambient 40 C
                place box in cabin
                ground body
                device battery is cell at box on body
                device lamp "Map lamp" is bulb at box on body
                mode lit {
                    set engine to stopped
                }
            }
            catalogue c {
                source cell {
                    voltage 12 V
                    resistance 8 mohm
                    polarity plus
                    pins plus, minus
                }
                lamp bulb {
                    voltage 12 V
                    pins 1, case
                    joins 1 to case through 6 ohm
                }
                cable pvc {
                    temperature 85 C
                    size 18 awg
                }
            }
            drawing d of p {
                datum box
                circuit 1 BK {
                    wire a 18 awg from battery:plus to lamp:1 length 1000 mm cable pvc
                }
            }
            """;

    @TempDir
    private Path folder;

    private static List<String> hover(Moment moment, Bench bench, String file, String piece, int plus) {
        return Services.hover(moment, file, bench.offset(file, piece, plus), Cancel.NEVER).map(Hover::text).orElse("")
                .lines().toList();
    }

    @Test
    void nobodyWaitsAndWhatWasSolvedIsKeptWhileTheProjectIsTheSame() throws Exception {
        Bench bench = Bench.orrin();
        Moment moment = bench.moment();
        assertTrue(hover(moment, bench, "front-1964.loom", "wire a 14 ga from J1:1", 5)
                .contains("carries: is being computed; look again in a moment"));
        assertTrue(moment.isSolvingWanted());
        AtomicInteger checks = new AtomicInteger();
        assertThrows(Cancelled.class, () -> moment.solve(() -> checks.incrementAndGet() > 5));
        assertEquals(6, checks.get(), "it gives way at once");
        Moment later = moment.next(moment.project(), moment.findings(), true);
        moment.solve(Cancel.NEVER);
        List<String> wire = hover(later, bench, "front-1964.loom", "wire a 14 ga from J1:1", 5);
        assertTrue(wire.stream().anyMatch(each -> each.matches("carries: [0-9.]+ A at most, [0-9]+ % of what it may "
                + "there; loses [0-9.]+ V, [0-9]+ C; mode dippedBeam, .*")), wire::toString);
        List<String> lamp = hover(later, bench, "orrin.loom", "device headLampL", 9);
        assertEquals(2, lamp.stream().filter(each -> each.matches("gets: [0-9.]+ V at least, [0-9]+ % of its design, "
                + "[0-9.]+ A; Left headlamp, (dip|main beam), mode .*")).count(), lamp::toString);
        PlatformView platform = later.project().platforms().get("orrin");
        assertTrue(later.flows(platform).orElseThrow().solves() < 2_000, "of each mode some sets of vehicles");
        asSolvedAlone(later, platform);
        inlaysAreThoseOfHover(later, bench);
    }

    /** The vehicle that is named, solved by itself in the mode that is named, has that current and voltage. */
    private static void asSolvedAlone(Moment moment, PlatformView platform) throws Exception {
        WireView wire = moment.project().wiring("front64").orElseThrow().wires().stream()
                .filter(each -> each.label().equals("12a")).findFirst().orElseThrow();
        Flows.Flow flow = moment.flows(platform).orElseThrow().wire(wire).orElseThrow();
        OperatingPoint point = SolveCircuits.of(moment.project(), flow.vehicle(), flow.mode().name()).stream()
                .filter(each -> each.schematic().fitment().words().equals(flow.fitted())).findFirst().orElseThrow()
                .points().getFirst();
        Piece piece = point.schematic().pieces().stream().filter(each -> each.subject().wire()
                .filter(of -> of == wire).isPresent() && point.conducts(each)).findFirst().orElseThrow();
        assertEquals(flow.amps(), Math.abs(point.amps(piece)), 1e-3);
        assertEquals(flow.volts(), Math.abs(point.volts(piece)), 1e-3);
    }

    /**
     * Ohm: 12 V drive 2 A through 6 ohm. Copper of AWG 18 (ASTM B258: 0.0403 in) of 0.017241 ohm mm2/m at 20 C and
     * 0.393 % more for each K (IEC 60028) has 20.95 mohm/m: 24.2 mohm/m at 60 C.
     */
    @Test
    @Tag("outside")
    void aLampOnABatteryGetsWhatOhmSays() {
        Bench bench = Bench.of("a.loom", CABIN);
        Moment moment = bench.moment();
        PlatformView platform = moment.project().platforms().get("p");
        moment.solve(Cancel.NEVER);
        Flows flows = moment.flows(platform).orElseThrow();
        Flows.Flow wire = flows.wire(moment.project().wiring("d").orElseThrow().wires().getFirst()).orElseThrow();
        assertEquals(2.0, wire.amps(), 0.15);
        assertEquals(0.02095 * (1 + 0.00393 * (wire.celsius() - 20)), wire.volts() / wire.amps(), 0.0006);
        assertTrue(wire.celsius() >= 40 && wire.celsius() < 60, wire::toString);
        assertTrue(flows.isWhole());
        double lamp = flows.device("p", "lamp").getFirst().volts();
        assertTrue(lamp > 10.5 && lamp < 12, "least when the battery is flat: " + lamp);
    }

    @Test
    void aWorkspaceSolvesBehindTheOneWhoAsked() throws Exception {
        Path file = Files.writeString(folder.toRealPath().resolve("a.loom"), CABIN);
        int at = CABIN.indexOf("wire a") + 5;
        try (Workspace workspace = new Workspace(Bench.READER, StandardRules.engine(1), Settings.TIMELESS,
                new Pace(Duration.ofHours(1), Duration.ZERO), (path, version, moment, told) -> { })) {
            workspace.opened(file, 1, CABIN);
            String told = "";
            long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
            while (!told.contains(" A at most") && System.nanoTime() < deadline) {
                told = workspace.ask(file, (moment, name, cancel) -> Services.hover(moment, name, at, cancel))
                        .get(60, TimeUnit.SECONDS).orElseThrow().text();
                Thread.sleep(5);
            }
            assertTrue(told.contains("carries: "), told);
            assertTrue(told.contains(" A at most"), told);
        }
    }

    private static List<String> inlays(Moment moment) {
        return Services.inlays(moment, "a.loom", 0, CABIN.length(), Unit.MM, Cancel.NEVER).stream().map(Inlay::text)
                .toList();
    }

    @Test
    void inlaysShowWhatIsSolvedAndAreInNoHurry() {
        Moment moment = Bench.of("a.loom", CABIN).checked();
        assertEquals(List.of("cut 1005 mm"), inlays(moment));
        assertTrue(moment.isSolvingWelcome());
        assertFalse(moment.isSolvingWanted(), "rules come first");
        moment.solve(Cancel.NEVER);
        assertFalse(moment.isSolvingWelcome());
        Flows flows = moment.flows(moment.project().platforms().get("p")).orElseThrow();
        Flows.Flow wire = flows.wire(moment.project().wiring("d").orElseThrow().wires().getFirst()).orElseThrow();
        Flows.Flow lamp = flows.device("p", "lamp").getFirst();
        List<String> told = inlays(moment);
        assertTrue(told.contains("cut 1005 mm"), told::toString);
        assertTrue(told.contains(String.format(Locale.ROOT, "%.2f A, loses %.3f V", wire.amps(), wire.volts())),
                told::toString);
        assertTrue(told.contains(String.format(Locale.ROOT, "%.2f V, %.2f A", lamp.volts(), lamp.amps())),
                told::toString);
        assertEquals(3, told.size(), told::toString);
        assertTrue(Services.inlays(moment, "a.loom", 0, CABIN.length(), Unit.MM, Cancel.NEVER).stream()
                .anyMatch(each -> each.tooltip().contains("in mode lit, ") && each.tooltip().contains("not measured")));
    }

    /** Beside the Orrin's lines stand the figures that hover tells; what carries nothing has none. */
    private static void inlaysAreThoseOfHover(Moment moment, Bench bench) {
        String file = "front-1964.loom";
        int shown = 0;
        for (Inlay inlay : Services.inlays(moment, file, 0, bench.text(file).length(), Unit.MM, Cancel.NEVER)) {
            if (inlay.text().contains(" A, loses ")) {
                int line = bench.text(file).lastIndexOf('\n', inlay.offset() - 1) + 1;
                int name = bench.text(file).indexOf("wire ", line) + 5;
                String amps = inlay.text().substring(0, inlay.text().indexOf(" A"));
                String told = Services.hover(moment, file, name, Cancel.NEVER).orElseThrow().text();
                assertTrue(told.contains("carries: " + amps + " A at most"), () -> inlay + "\n" + told);
                shown++;
            }
        }
        assertTrue(shown > 10, "wires that carry something: " + shown);
    }

    @Test
    void inlaysAreSolvedAfterTheRulesAndAnEditTakesThemAway() throws Exception {
        Path file = Files.writeString(folder.toRealPath().resolve("a.loom"), CABIN);
        List<String> heard = new CopyOnWriteArrayList<>();
        Listener listener = new Listener() {
            @Override
            public void findings(Path path, OptionalInt version, Moment moment, List<Finding> findings) {
                // told elsewhere
            }

            @Override
            public void settled(Path project) {
                heard.add("settled");
            }

            @Override
            public void solved(Path project) {
                heard.add("solved");
            }
        };
        try (Workspace workspace = new Workspace(Bench.READER, StandardRules.engine(1), Settings.TIMELESS,
                new Pace(Duration.ofHours(1), Duration.ZERO), listener)) {
            workspace.changed(file, 1, CABIN);
            assertEquals(List.of("cut 1005 mm"), ask(workspace, file));
            assertEquals(List.of(), heard, "nothing is solved before the rules were asked");
            workspace.settled().get(60, TimeUnit.SECONDS);
            until(() -> heard.contains("solved"));
            assertEquals(List.of("settled", "solved"), heard);
            assertEquals(3, ask(workspace, file).size());
            workspace.changed(file, 2, CABIN.replace("6 ohm", "12 ohm"));
            assertEquals(List.of("cut 1005 mm"), ask(workspace, file), "figures of another text are not shown");
            workspace.settled().get(60, TimeUnit.SECONDS);
            until(() -> heard.size() == 4);
            assertTrue(ask(workspace, file).stream().anyMatch(each -> each.startsWith("1.0") && each.contains(" A,")),
                    "half of it through twice the resistance");
            assertEquals(List.of("settled", "solved", "settled", "solved"), heard, "once for each text");
        }
    }

    private static List<String> ask(Workspace workspace, Path file) throws Exception {
        return workspace.ask(file, (moment, name, cancel) -> inlays(moment)).get(60, TimeUnit.SECONDS);
    }

    private static void until(BooleanSupplier condition) throws InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        while (!condition.getAsBoolean() && System.nanoTime() < deadline) {
            Thread.sleep(5);
        }
        assertTrue(condition.getAsBoolean());
    }
}
