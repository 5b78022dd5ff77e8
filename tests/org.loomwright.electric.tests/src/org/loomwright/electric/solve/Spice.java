// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.solve;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** ngspice (Debian package ngspice), run as a program of its own on networks of ours. */
public final class Spice {

    private static final Pattern LISTED = Pattern.compile("(?m)^v\\((\\d+)\\) = (\\S+)$");
    private static final int SECONDS = 120;

    private Spice() {
    }

    /** Whether the program is there. */
    public static boolean isThere() {
        for (String folder : System.getenv().getOrDefault("PATH", "").split(":")) {
            if (Files.isExecutable(Path.of(folder).resolve("ngspice"))) {
                return true;
            }
        }
        return false;
    }

    /**
     * The same network with each battery and each regulated source as what it is where it works in a solution: giving
     * or charged; off, regulating, or at its greatest current. The other program goes round in circles at the kinks
     * between these. That its answer lies there too has to be checked afterwards, with {@link #sameSides}.
     */
    public static Netlist onOneSide(Netlist netlist, double[] potentials) {
        List<Netlist.Branch> branches = new ArrayList<>();
        for (Netlist.Branch each : netlist.branches()) {
            double across = potentials[each.from()] - potentials[each.to()];
            branches.add(new Netlist.Branch(each.from(), each.to(), switch (each.element()) {
                case Element.Battery battery -> new Element.Cell(battery.volts(),
                        side(battery, across) > 0 ? battery.charge() : battery.ohms());
                case Element.Regulated source -> side(source, across) == 0
                        ? new Element.Cell(source.volts(), source.ohms())
                        : new Element.Draw(side(source, across) > 0 ? 0 : -source.amps());
                default -> each.element();
            }));
        }
        return new Netlist(netlist.nodes(), branches, netlist.held());
    }

    /** Whether all batteries and regulated sources work in the same way in two solutions. */
    public static boolean sameSides(Netlist netlist, double[] one, double[] other) {
        return netlist.branches().stream().allMatch(each -> side(each.element(), one[each.from()] - one[each.to()])
                == side(each.element(), other[each.from()] - other[each.to()]));
    }

    private static int side(Element element, double across) {
        return switch (element) {
            case Element.Battery battery -> across > battery.volts() ? 1 : 0;
            case Element.Regulated source -> across > source.volts() ? 1
                    : source.volts() - across > source.amps() * source.ohms() ? -1 : 0;
            default -> 0;
        };
    }

    /**
     * The potentials in V of some networks, each of which holds node 0 at 0.
     *
     * @param near where it begins its search, rounded to 0.1 V; by network, empty to begin with nothing
     */
    public static List<double[]> potentials(List<Netlist> netlists, List<double[]> near, Path folder)
            throws IOException, InterruptedException {
        StringBuilder control = new StringBuilder("* networks one after the other\n.control\nset numdgt=14\n");
        for (int i = 0; i < netlists.size(); i++) {
            Path file = folder.resolve("net" + i + ".cir");
            Files.writeString(file, circuit("net" + i, netlists.get(i), near.isEmpty() ? new double[0] : near.get(i)));
            control.append("source ").append(file).append("\nop\n");
            control.append("echo BEGIN ").append(i).append("\n");
            for (int node = 1; node < netlists.get(i).nodes(); node++) {
                control.append("print v(").append(node).append(")\n");
            }
            control.append("destroy all\nremcirc\n");
        }
        control.append("quit\n.endc\n.end\n");
        String answer = run(Files.writeString(folder.resolve("all.cir"), control), folder);
        List<double[]> all = new ArrayList<>();
        String[] parts = answer.split("BEGIN \\d+\n");
        if (parts.length != netlists.size() + 1) {
            throw new AssertionError("ngspice answered " + (parts.length - 1) + " of " + netlists.size() + " networks: "
                    + answer.substring(0, Math.min(600, answer.length())));
        }
        for (int i = 0; i < netlists.size(); i++) {
            double[] volts = new double[netlists.get(i).nodes()];
            Arrays.fill(volts, Double.NaN);
            volts[0] = 0;
            Matcher found = LISTED.matcher(parts[i + 1]);
            while (found.find()) {
                volts[Integer.parseInt(found.group(1))] = Double.parseDouble(found.group(2));
            }
            all.add(volts);
        }
        return all;
    }

    static String run(Path file, Path folder) throws IOException, InterruptedException {
        Path log = folder.resolve("log.txt");
        Process process = new ProcessBuilder("ngspice", "-b", file.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD).redirectOutput(log.toFile()).start();
        if (!process.waitFor(SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError("ngspice took too long");
        }
        return Files.readString(log);
    }

    /** One network as its source text. */
    static String circuit(String title, Netlist netlist, double[] near) {
        StringBuilder text = new StringBuilder("* ").append(title).append('\n');
        text.append(".options reltol=1e-9 vntol=1e-12 abstol=1e-13 gmin=1e-16 itl1=1000\n");
        for (int node = 1; node < netlist.nodes(); node++) {
            if (netlist.isHeld(node)) {
                text.append("Vh").append(node).append(' ').append(node).append(" 0 dc ")
                        .append(netlist.held().get(node)).append('\n');
            }
        }
        for (int node = 1; node < near.length; node++) {
            text.append(".nodeset v(").append(node).append(")=").append(Math.round(near[node] * 10) / 10.0)
                    .append('\n');
        }
        for (int i = 0; i < netlist.branches().size(); i++) {
            Netlist.Branch branch = netlist.branches().get(i);
            String ends = i + " " + branch.from() + " " + branch.to() + " ";
            String across = branch.to() == 0 ? "v(" + branch.from() + ")" : branch.from() == 0
                    ? "(-v(" + branch.to() + "))" : "v(" + branch.from() + "," + branch.to() + ")";
            text.append(switch (branch.element()) {
                case Element.Resistor resistor -> "R" + ends + resistor.ohms();
                case Element.Cell cell -> "V" + i + " " + branch.from() + " s" + i + " dc " + cell.volts() + "\nR" + i
                        + " s" + i + " " + branch.to() + " " + cell.ohms();
                case Element.Battery kinked -> throw new IllegalArgumentException("first take its side: " + kinked);
                case Element.Regulated kinked -> throw new IllegalArgumentException("first take its side: " + kinked);
                case Element.Filament lamp -> "B" + ends + "I=" + lamp.amps() + "*" + across + "/" + lamp.volts()
                        + "*min(12,pow(max(abs(" + across + ")/" + lamp.volts() + ",1e-6),-0.45))";
                case Element.Electronic load -> "B" + ends + "I=(" + across + " >= " + load.dropOut() + ") ? "
                        + load.watts() + (load.steady() ? "" : "/max(" + across + "," + load.dropOut() + ")")
                        + " : " + load.watts() / (load.steady() ? 1 : load.dropOut()) + "*max(" + across + ",0)/"
                        + load.dropOut() + "+" + Element.OneWay.LEAK + "*min(" + across + ",0)";
                case Element.Draw draw -> "I" + ends + "dc " + draw.amps();
                case Element.OneWay diode -> "B" + ends + "I=(" + across + " > " + diode.volts() + ") ? (" + across
                        + "-" + diode.volts() + ")/" + diode.ohms() + " : " + Element.OneWay.LEAK + "*(" + across + "-"
                        + diode.volts() + ")";
            }).append('\n');
        }
        return text.append(".end\n").toString();
    }
}
