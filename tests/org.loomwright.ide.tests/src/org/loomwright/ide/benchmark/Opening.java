// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.benchmark;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.loomwright.ide.Bench;
import org.loomwright.ide.Services;
import org.loomwright.ide.session.Pace;
import org.loomwright.ide.session.Workspace;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;

/** Heap in use after many drawings were opened and checked, and while they are edited. */
public final class Opening {

    private static final double MB = 1 << 20;
    private static final int CAVITIES = 100;

    private Opening() {
    }

    /** @param args how many drawings, wires in each, edits, and how many of the drawings an editor has open */
    public static void main(String[] args) throws Exception {
        int drawings = args.length > 0 ? Integer.parseInt(args[0]) : 50;
        int wires = args.length > 1 ? Integer.parseInt(args[1]) : 300;
        int edits = args.length > 2 ? Integer.parseInt(args[2]) : 1_000;
        int open = args.length > 3 ? Integer.parseInt(args[3]) : drawings;
        Path folder = Files.createTempDirectory("opening");
        Files.writeString(folder.resolve("platform.loom"), platform(drawings));
        List<Path> files = new ArrayList<>();
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < drawings; i++) {
            texts.add(drawing(i, wires));
            files.add(Files.writeString(folder.resolve("drawing" + i + ".loom"), texts.get(i)));
        }
        print("before");
        try (Workspace workspace = new Workspace(Bench.READER, StandardRules.engine(2), Settings.TIMELESS,
                new Pace(Duration.ofHours(1), Duration.ZERO), (path, version, moment, findings) -> { })) {
            long start = System.nanoTime();
            for (int i = 0; i < open; i++) {
                workspace.opened(files.get(i), 1, texts.get(i));
                ask(workspace, files.get(i), 0, texts.get(i));
            }
            System.out.printf(Locale.ROOT, "opened in %.1f s%n", (System.nanoTime() - start) / 1e9);
            print("opened");
            start = System.nanoTime();
            workspace.settled().get(20, TimeUnit.MINUTES);
            System.out.printf(Locale.ROOT, "checked in %.1f s%n", (System.nanoTime() - start) / 1e9);
            print("checked");
            for (int edit = 1; edit <= edits; edit++) {
                int which = edit % open;
                String text = texts.get(which).replace("wire w7 18", "wire w7 " + (edit % 2 == 0 ? "18" : "16"));
                int at = text.indexOf("wire w7");
                workspace.changed(files.get(which), 1 + edit, text);
                ask(workspace, files.get(which), at + 5, text);
                if (edit % 200 == 0) {
                    workspace.settled().get(20, TimeUnit.MINUTES);
                    print("after " + edit + " edits");
                }
            }
        } finally {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path each : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
                    Files.delete(each);
                }
            }
        }
    }

    /** What an editor asks by itself. */
    private static void ask(Workspace workspace, Path file, int at, String text) throws Exception {
        workspace.ask(file, (moment, name, cancel) -> Services.colours(moment, name).size()
                + Services.outline(moment, name).size() + Services.folds(moment, name).size()).get();
        workspace.ask(file, (moment, name, cancel) -> Services.complete(moment, name, at, cancel).size()).get();
        workspace.ask(file, (moment, name, cancel) -> Services.inlays(moment, name, Math.max(0, at - 1000),
                Math.min(text.length(), at + 1000), org.loomwright.quantity.Unit.MM, cancel).size()).get();
    }

    private static String platform(int years) {
        StringBuilder text = new StringBuilder("platform p {\n    supply 12 V negative ground\n    years 1 .. " + years
                + "\n    zone cabin ambient 40 C\n");
        for (String place : List.of("bulkhead", "left", "right", "rear")) {
            text.append("    place ").append(place).append(" in cabin\n");
        }
        return text.append("}\ncatalogue c {\n    housing h {\n        cavities 1 .. ").append(CAVITIES)
                .append("\n    }\n}\n").toString();
    }

    /** A drawing of one year with wires between connectors at four places. */
    private static String drawing(int index, int wires) {
        StringBuilder text = new StringBuilder(String.format(Locale.ROOT,
                "drawing d%d of p when year = %d {%n    datum bulkhead%n    trunk t {%n        breakout b1 at 500 mm%n"
                + "        breakout b2 at 900 mm%n        breakout b3 at 1500 mm%n    }%n"
                + "    branch l from b1 to left 300 mm%n    branch r from b2 to right 400 mm%n"
                + "    branch e from b3 to rear 700 mm%n", index, index + 1));
        int pairs = (wires + CAVITIES - 1) / CAVITIES;
        for (int i = 0; i < pairs; i++) {
            text.append("    connector A").append(i).append(" at bulkhead is h\n    connector B").append(i)
                    .append(" at ").append(List.of("left", "right", "rear").get(i % 3)).append(" is h\n");
        }
        for (int i = 0; i < wires; i++) {
            text.append(String.format(Locale.ROOT, "    circuit %d BK/RD {%n        wire w%d 18 ga from A%d:%d to B%d:%d "
                    + "cable linkLead18%n    }%n", i + 1, i, i / CAVITIES, i % CAVITIES + 1, i / CAVITIES,
                    i % CAVITIES + 1));
        }
        return text.append("}\n").toString();
    }

    private static void print(String when) throws InterruptedException {
        for (int i = 0; i < 3; i++) {
            System.gc();
            Thread.sleep(50);
        }
        System.out.printf(Locale.ROOT, "%-18s heap in use %6.1f MB%n", when,
                ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / MB);
    }
}
