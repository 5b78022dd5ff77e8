// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Operating points a second, of ours and of ngspice, on the random networks of {@link AgainstSpiceTest}, by processor
 * time on both sides, so that other work on the machine counts for neither.
 *
 * <p>Both begin each solve with nothing: ngspice needs as many iterations for the last {@code op} of a network as for
 * the first, which is printed. Both solve one network many times before they go on to the next. Reading counts for
 * neither: a run of ngspice that reads all and solves nothing is taken off one that solves each many times. An
 * {@code op} also prepares a table of results and looks at the memory; a second figure for ngspice leaves that out, by
 * taking off what as many {@code op} of two resistors cost, which favours it. Ours is measured from the network as a
 * list of elements to all potentials, currents and the residual, once with a solver for each solve, so that nothing is
 * kept, and once with one for all, which keeps the order of elimination.
 */
public final class SpiceSpeed {

    private static final int NETWORKS = 200;
    private static final int TIMES = 50;
    private static final int ROUNDS = 5;
    private static final int WARM = 10;
    private static final Pattern ITERATIONS = Pattern.compile("Total iterations = (\\d+)");
    private static final Pattern SPENT = Pattern.compile("(\\d+)m([0-9.]+)s (\\d+)m([0-9.]+)s");

    private SpiceSpeed() {
    }

    /** Prints rates and ratios, once a round; needs ngspice and, as the argument, a folder to write in. */
    public static void main(String[] args) throws IOException, InterruptedException {
        List<Netlist> netlists = new ArrayList<>();
        for (int seed = 0; seed < NETWORKS; seed++) {
            Netlist netlist = AgainstSpiceTest.RandomNetworks.of(seed);
            netlists.add(Spice.onOneSide(netlist, solved(netlist).potentials()));
        }
        Path folder = Files.createDirectories(Path.of(args[0]));
        iterations(netlists, folder);
        for (int i = 0; i < WARM; i++) {
            ours(netlists, i % 2 == 0);
        }
        List<Netlist> least = new ArrayList<>();
        for (int i = 0; i < NETWORKS; i++) {
            least.add(Netlist.builder().hold(0, 0).hold(1, 12).resistor(1, 2, 1).resistor(2, 0, 1).build());
        }
        double points = NETWORKS * TIMES;
        for (int round = 0; round < ROUNDS; round++) {
            double fresh = points / ours(netlists, false);
            double kept = points / ours(netlists, true);
            double read = spice(netlists, 0, folder);
            double all = points / (spice(netlists, TIMES, folder) - read);
            double solving = 1 / (1 / all - (spice(least, TIMES, folder) - spice(least, 0, folder)) / points);
            System.out.printf(Locale.ROOT, "ours %.0f a second, with the order kept %.0f; ngspice %.0f, ratios %.1f and"
                    + " %.1f; its solving alone %.0f, ratios %.1f and %.1f%n", fresh, kept, all, fresh / all,
                    kept / all, solving, fresh / solving, kept / solving);
        }
    }

    private static double ours(List<Netlist> netlists, boolean keeps) {
        NewtonSolver kept = new NewtonSolver();
        long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        for (Netlist netlist : netlists) {
            for (int i = 0; i < TIMES; i++) {
                solved(keeps ? kept : new NewtonSolver(), netlist);
            }
        }
        return (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 1e9;
    }

    private static Outcome.Solution solved(Netlist netlist) {
        return solved(new NewtonSolver(), netlist);
    }

    private static Outcome.Solution solved(NewtonSolver solver, Netlist netlist) {
        if (solver.solve(netlist) instanceof Outcome.Solution solution) {
            return solution;
        }
        throw new IllegalStateException("a network is not solved");
    }

    /** The processor time in s, of the user and of the system, that ngspice takes. */
    private static double spice(List<Netlist> netlists, int times, Path folder)
            throws IOException, InterruptedException {
        String repeat = times > 0 ? "repeat " + times + "\nop\ndestroy all\nend\n" : "";
        Process process = new ProcessBuilder("sh", "-c", "ngspice -b \"$0\" >/dev/null 2>&1; times",
                script(netlists, repeat, folder).toString()).start();
        String answer = new String(process.getInputStream().readAllBytes());
        process.waitFor();
        Matcher matcher = SPENT.matcher(answer.lines().toList().getLast());
        if (!matcher.matches()) {
            throw new IllegalStateException(answer);
        }
        return Integer.parseInt(matcher.group(1)) * 60 + Double.parseDouble(matcher.group(2))
                + Integer.parseInt(matcher.group(3)) * 60 + Double.parseDouble(matcher.group(4));
    }

    /** Prints how many iterations ngspice takes for a first and for a further solve, and how many steps are ours. */
    private static void iterations(List<Netlist> netlists, Path folder) throws IOException, InterruptedException {
        String op = "op\nrusage totiter\n";
        String answer = Spice.run(script(netlists, op + op, folder), folder);
        Matcher matcher = ITERATIONS.matcher(answer);
        long first = 0;
        long both = 0;
        while (matcher.find()) {
            first += Integer.parseInt(matcher.group(1));
            matcher.find();
            both += Integer.parseInt(matcher.group(1));
        }
        System.out.printf(Locale.ROOT, "ngspice: %d iterations for all networks, %d when each is solved again; ours: %d"
                + " steps%n", first, both - first, netlists.stream().mapToInt(each -> solved(each).steps()).sum());
    }

    private static Path script(List<Netlist> netlists, String work, Path folder) throws IOException {
        StringBuilder control = new StringBuilder("* networks\n.control\n");
        for (int i = 0; i < netlists.size(); i++) {
            Path file = folder.resolve("net" + i + ".cir");
            Files.writeString(file, Spice.circuit("net" + i, netlists.get(i), new double[0]));
            control.append("source ").append(file).append('\n').append(work).append("remcirc\n");
        }
        return Files.writeString(folder.resolve("all.cir"), control.append("quit\n.endc\n.end\n"));
    }
}
