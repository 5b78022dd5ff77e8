// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.benchmark;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.loomwright.app.load.Input;

/** The next revision of a project: about one line in fifty has another size, length or name. Always the same edits. */
final class Revised {

    private static final int ONE_IN = 50;

    private Revised() {
    }

    /** The files after the edits. */
    static List<Input> of(List<Input> inputs) throws IOException {
        Random random = new Random(1971);
        List<Input> revised = new ArrayList<>();
        for (Input input : inputs) {
            List<String> lines = new ArrayList<>();
            for (String line : text(input).lines().toList()) {
                lines.add(random.nextInt(ONE_IN) == 0 ? edited(line, random) : line);
            }
            revised.add(Input.of(input.name(), (String.join("\n", lines) + "\n").getBytes(StandardCharsets.UTF_8)));
        }
        return revised;
    }

    static String text(Input input) throws IOException {
        try (var in = input.content().open()) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static String edited(String line, Random random) {
        return switch (random.nextInt(3)) {
            case 0 -> line.replace("18 ga", "16 ga");
            case 1 -> line.replace("wire a ", "wire z ");
            default -> line.replace("250 mm", "260 mm");
        };
    }
}
