// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A general-purpose solver of integer programs, run as a program of its own. */
enum GeneralSolver {
    /** CBC, Debian package coinor-cbc. */
    CBC("objective value +([-+0-9.eE]+)") {
        @Override
        List<String> call(Path model, Path answer, long seconds) {
            return List.of("cbc", model.toString(), "sec", Long.toString(seconds), "ratio", "0", "allow", "0", "solve",
                    "solu", answer.toString());
        }
    };

    private static final long SECONDS = 20;

    private final Pattern value;

    GeneralSolver(String value) {
        this.value = Pattern.compile(value);
    }

    /** How it is called, to end after so many seconds without a proof. */
    abstract List<String> call(Path model, Path answer, long seconds);

    /** Whether the program is there. */
    boolean isThere() {
        for (String folder : System.getenv().getOrDefault("PATH", "").split(":")) {
            if (Files.isExecutable(Path.of(folder).resolve(name().toLowerCase(Locale.ROOT)))) {
                return true;
            }
        }
        return false;
    }

    /** The proved optimum of a model; fails when it takes more than 20 s. */
    double optimum(String text, Path folder) throws IOException, InterruptedException {
        Path model = folder.resolve("model.lp");
        Path answer = folder.resolve("answer.txt");
        Files.writeString(model, text);
        Files.deleteIfExists(answer);
        Process process = new ProcessBuilder(call(model, answer, SECONDS)).redirectErrorStream(true)
                .redirectOutput(folder.resolve("log.txt").toFile()).start();
        if (!process.waitFor(2 * SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError(this + " took too long");
        }
        String result = Files.readString(answer);
        Matcher found = value.matcher(result);
        if (!found.find() || !result.startsWith("Optimal ")) {
            throw new AssertionError(this + " proved no optimum: " + result.lines().findFirst().orElse(""));
        }
        return Double.parseDouble(found.group(1));
    }
}
