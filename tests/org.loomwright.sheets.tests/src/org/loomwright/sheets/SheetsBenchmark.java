// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.sheets.page.Paper;

/** Prints how many pages of the Orrin are printed in a second, and how long a formboard of 2,000 wires takes. */
public final class SheetsBenchmark {

    private static final int BRANCHES = 200;
    private static final int WIRES = 2_000;

    private SheetsBenchmark() {
    }

    public static void main(String[] args) throws Exception {
        Examples examples = new Examples(Runtime.getRuntime().availableProcessors());
        Opened orrin = examples.example("orrin");
        for (int round = 1; round <= 3; round++) {
            for (String kit : List.of("frontKit", "rearKit", "engineKit", "flasherKit")) {
                long start = System.nanoTime();
                long work = work();
                int pages = examples.files(orrin, kit, "", SheetChoice.all(Paper.A4)).stream()
                        .mapToInt(SheetFile::pages).sum();
                double seconds = (System.nanoTime() - start) / 1e9;
                System.out.printf("round %d, %s: %d pages in %.2f s, %.0f pages a second; %.2f s of processors%n",
                        round, kit, pages, seconds, pages / seconds, (work() - work) / 1e9);
            }
        }
        Path folder = Files.createTempDirectory("board");
        Opened large = examples.text(folder, large());
        long start = System.nanoTime();
        long work = work();
        int pages = examples.files(large, "large", "", SheetChoice.of(Paper.A3, SheetKind.FORMBOARD)).stream()
                .mapToInt(SheetFile::pages).sum();
        System.out.printf("formboard of %d wires on %d branches: %d pages in %.2f s; %.2f s of processors%n", WIRES,
                BRANCHES, pages, (System.nanoTime() - start) / 1e9, (work() - work) / 1e9);
        Files.delete(folder.resolve("all.loom"));
        Files.delete(folder);
    }

    /** What all processors have worked for this program, in ns: the same however busy the machine is. */
    private static long work() {
        return ProcessHandle.current().info().totalCpuDuration().orElse(Duration.ZERO).toNanos();
    }

    private static String large() {
        StringBuilder text = new StringBuilder("platform p \"P\" {\n    place d\n");
        for (int i = 0; i < BRANCHES; i++) {
            text.append("    place q").append(i).append('\n');
        }
        text.append("}\ncatalogue k {\n    cable c \"Cable\" {\n        size 1 mm2 diameter 2.1 mm\n    }\n}\n"
                + "harness large \"Large\" of p {\n    cable c\n    datum d\n    trunk main {\n");
        for (int i = 0; i < BRANCHES; i++) {
            text.append("        breakout x").append(i).append(" at ").append(100 + i * 30).append(" mm\n");
        }
        text.append("    }\n");
        for (int i = 0; i < BRANCHES; i++) {
            text.append("    branch b").append(i).append(" from x").append(i).append(" to q").append(i).append(' ')
                    .append(100 + i * 37 % 500).append(" mm\n");
        }
        text.append("    connector J at d\n");
        for (int i = 0; i < BRANCHES; i++) {
            text.append("    connector C").append(i).append(" on b").append(i).append('\n');
        }
        for (int i = 1; i <= WIRES; i++) {
            text.append("    circuit ").append(i).append(" RD {\n        wire a 1 mm2 from J:").append(i).append(" to C")
                    .append(i % BRANCHES).append(':').append(i / BRANCHES + 1).append("\n    }\n");
        }
        return text.append("}\n").toString();
    }
}
