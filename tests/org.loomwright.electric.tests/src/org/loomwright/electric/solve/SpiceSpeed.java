// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Operating points a second, of ours and of ngspice, on the random networks of {@link AgainstSpiceTest}. Reading the
 * networks counts for neither: a run of ngspice that reads all and solves nothing is taken off one that solves each
 * many times. Ours begins each solve with nothing, while ngspice may go on from its last answer, which favours it.
 */
public final class SpiceSpeed {

    private static final int NETWORKS = 200;
    private static final int TIMES = 50;
    private static final int ROUNDS = 3;
    private static final int WARM = 5;
    private static final double NANOS = 1e9;

    private SpiceSpeed() {
    }

    /** Prints both rates and their ratio, once a round; needs ngspice and, as the argument, a folder to write in. */
    public static void main(String[] args) throws IOException, InterruptedException {
        List<Netlist> netlists = new ArrayList<>();
        for (int seed = 0; seed < NETWORKS; seed++) {
            Netlist netlist = AgainstSpiceTest.RandomNetworks.of(seed);
            netlists.add(Spice.onOneSide(netlist, solved(netlist).potentials()));
        }
        Path folder = Files.createDirectories(Path.of(args[0]));
        for (int i = 0; i < WARM * TIMES; i++) {
            netlists.forEach(SpiceSpeed::solved);
        }
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            for (int i = 0; i < TIMES; i++) {
                netlists.forEach(SpiceSpeed::solved);
            }
            double ours = NETWORKS * TIMES * NANOS / (System.nanoTime() - start);
            long nothing = spice(netlists, 0, folder);
            double theirs = NETWORKS * TIMES * NANOS / (spice(netlists, TIMES, folder) - nothing);
            System.out.printf("ours %.0f a second, ngspice %.0f a second, ratio %.1f%n", ours, theirs, ours / theirs);
        }
    }

    private static Outcome.Solution solved(Netlist netlist) {
        if (new NewtonSolver().solve(netlist) instanceof Outcome.Solution solution) {
            return solution;
        }
        throw new IllegalStateException("a network is not solved");
    }

    private static long spice(List<Netlist> netlists, int times, Path folder) throws IOException, InterruptedException {
        StringBuilder control = new StringBuilder("* networks\n.control\n");
        for (int i = 0; i < netlists.size(); i++) {
            Path file = folder.resolve("net" + i + ".cir");
            Files.writeString(file, Spice.circuit("net" + i, netlists.get(i), new double[0]));
            control.append("source ").append(file).append('\n');
            if (times > 0) {
                control.append("repeat ").append(times).append("\nop\ndestroy all\nend\n");
            }
            control.append("remcirc\n");
        }
        Path script = Files.writeString(folder.resolve("all.cir"), control.append("quit\n.endc\n.end\n"));
        long start = System.nanoTime();
        Spice.run(script, folder);
        return System.nanoTime() - start;
    }
}
