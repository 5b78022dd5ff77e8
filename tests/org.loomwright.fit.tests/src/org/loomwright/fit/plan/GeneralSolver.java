// SPDX-License-Identifier: EPL-2.0
package org.loomwright.fit.plan;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A general-purpose solver of integer programs, run as a program of its own. */
enum GeneralSolver {
    /** CBC, Debian package coinor-cbc. */
    CBC("cbc", "Optimal .*objective value +([-+0-9.eE]+)") {
        @Override
        List<String> call(Path model, Path answer) {
            return List.of("cbc", model.toString(), "ratio", "0", "allow", "0", "solve", "solu", answer.toString());
        }
    },
    /** GLPK, Debian package glpk-utils; all its cuts, and branching by pseudo-costs. */
    GLPK("glpsol", "(?s).*\\ns mip \\d+ \\d+ o ([-+0-9.eE]+)\\s.*") {
        @Override
        List<String> call(Path model, Path answer) {
            return List.of("glpsol", "--lp", model.toString(), "--mipgap", "0", "--cuts", "--pcost", "-w", answer
                    .toString());
        }
    };

    /** Of the processor, for each model; what is not proved in that time is not agreed. */
    private static final long SECONDS = 5;
    /** By the clock, in minutes, on a machine that is busy with other work. */
    private static final long PATIENCE = 2;

    private final String program;
    private final Pattern proved;

    /**
     * @param proved what an answer begins with that is proved to be the optimum, and its value
     */
    GeneralSolver(String program, String proved) {
        this.program = program;
        this.proved = Pattern.compile(proved);
    }

    abstract List<String> call(Path model, Path answer);

    /** Started to be ended after so many seconds of the processor, without a proof then. */
    Process start(Path model, Path answer, long seconds, Path log) throws IOException {
        List<String> call = new ArrayList<>(List.of("sh", "-c", "ulimit -t " + seconds + "; exec \"$@\"", "sh"));
        call.addAll(call(model, answer));
        return new ProcessBuilder(call).redirectErrorStream(true).redirectOutput(log.toFile()).start();
    }

    /** The optimum in an answer; empty when it is not proved. */
    OptionalDouble proved(Path answer) throws IOException {
        Matcher found = proved.matcher(Files.exists(answer) ? Files.readString(answer) : "");
        return found.lookingAt() ? OptionalDouble.of(Double.parseDouble(found.group(1))) : OptionalDouble.empty();
    }

    /** Whether the program is there. */
    boolean isThere() {
        for (String folder : System.getenv().getOrDefault("PATH", "").split(":")) {
            if (Files.isExecutable(Path.of(folder).resolve(program))) {
                return true;
            }
        }
        return false;
    }

    /** The proved optimum of a model; fails when it is not proved in 5 s of the processor. */
    double optimum(String text, Path folder) throws IOException, InterruptedException {
        Path model = folder.resolve("model.lp");
        Path answer = folder.resolve("answer.txt");
        Files.writeString(model, text);
        Files.deleteIfExists(answer);
        Process process = start(model, answer, SECONDS, folder.resolve("log.txt"));
        if (!process.waitFor(PATIENCE, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new AssertionError(this + " hangs");
        }
        return proved(answer).orElseThrow(() -> new AssertionError(this + " proved no optimum in " + SECONDS + " s"));
    }
}
