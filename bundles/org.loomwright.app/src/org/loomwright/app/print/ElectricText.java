// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.loomwright.app.SolveCircuits.Solved;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.electric.ampacity.AircraftTable;
import org.loomwright.electric.ampacity.Allowance;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Remark;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.Trail;
import org.loomwright.electric.solve.Element;

/** Currents and voltages of one vehicle, as tables for people. */
public final class ElectricText {

    /** Flux of a filament lamp follows this power of the voltage (Fink and Beaty, Standard Handbook, p. 22-8). */
    static final double LIGHT = 3.4;
    private static final double NOTHING = 5e-4;
    /** So many loads of a circuit have their way told piece by piece. */
    private static final int BUDGETS = 8;
    private static final String CAUTION = "Computed from what the sources state, not measured. Check against the"
            + " vehicle in front of you; where the law, its\nmaker or a licensed"
            + " practitioner asks for more, do that.\n";

    private final AircraftTable aircraft = new AircraftTable();
    private final Palette palette;
    private final int width;

    public ElectricText(Palette palette, int width) {
        this.palette = palette;
        this.width = width;
    }

    /**
     * Tables of one vehicle.
     *
     * @param circuit name of a circuit to which wires, contacts and loads are narrowed; empty for all
     * @param whole   true for all tables of each mode, false for one line a mode
     */
    public String of(Solved solved, String circuit, boolean whole) {
        StringBuilder out = new StringBuilder();
        out.append(palette.paint(Tone.HEAD, title(solved))).append("\n\n");
        if (whole) {
            solved.points().forEach(point -> mode(solved, point, circuit, out));
        } else {
            summary(solved, out);
        }
        remarks(solved, out);
        return out.append(CAUTION).toString();
    }

    private static String title(Solved solved) {
        var platform = solved.schematic().fitment().platform().platform();
        return (platform.title().isEmpty() ? platform.name().text() : platform.title()) + ": " + solved.words() + "; "
                + solved.schematic().fitment().words();
    }

    // ---- one line a mode

    private void summary(Solved solved, StringBuilder out) {
        List<String> heads = new ArrayList<>(List.of("mode"));
        List<List<String>> cells = new ArrayList<>();
        for (OperatingPoint point : solved.points()) {
            heads.add(point.mode().name());
            cells.add(List.of(
                    signed(sum(point, Role.BATTERY)), signed(sum(point, Role.MACHINE)),
                    extreme(point, this::isLit, each -> -point.share(each), each -> percent(point.share(each)) + " "
                            + each.subject().label()),
                    extreme(point, each -> isWire(each) && carries(point, each), each -> share(solved, point, each),
                            each -> percent(share(solved, point, each)) + " " + each.subject().element()),
                    extreme(point, each -> each.role() == Role.FUSE && each.rating() > 0 && carries(point, each),
                            each -> Math.abs(point.amps(each)) / each.rating(),
                            each -> percent(Math.abs(point.amps(each)) / each.rating()) + " "
                                    + each.subject().label()),
                    point.solved() ? "" : point.troubles().getFirst().words()));
        }
        table(heads, List.of("battery A", "machine A", "least voltage at a lamp", "most of ampacity",
                "most of a fuse", ""), cells, out);
    }

    private double sum(OperatingPoint point, Role role) {
        double sum = 0;
        for (Piece piece : point.schematic().pieces()) {
            sum -= piece.role() == role ? point.amps(piece) : 0;
        }
        return sum;
    }

    private boolean isLit(Piece piece) {
        return piece.role() == Role.LOAD && piece.model() instanceof Model.Working working
                && working.element() instanceof Element.Filament;
    }

    private static String extreme(OperatingPoint point, Predicate<Piece> which, Function<Piece, Double> by,
            Function<Piece, String> words) {
        Comparator<Piece> order = Comparator.comparing(by);
        Optional<Piece> most = point.schematic().pieces().stream().filter(point::conducts)
                .filter(which).filter(each -> carries(point, each)
                        && (each.role() != Role.LOAD || point.share(each) > 0.3))
                .reduce((one, other) -> order.compare(other, one) > 0 ? other : one);
        return most.map(words).orElse("");
    }

    // ---- all of one mode

    private void mode(Solved solved, OperatingPoint point, String circuit, StringBuilder out) {
        out.append(palette.paint(Tone.HEAD, "mode " + point.mode().name() + ", " + point.mode().words()
                + ": engine " + point.mode().engine().word())).append('\n');
        point.troubles().forEach(each -> out.append(palette.paint(Tone.ERROR, "not solved: " + each.words()))
                .append('\n'));
        rows(point, "sources", List.of("A given", "V at its poles"), Role.BATTERY, Role.MACHINE, circuit,
                each -> List.of(signed(-point.amps(each)), volts(point.volts(each))), out);
        rows(point, "loads", List.of("A", "V", "of design", "light", "lost on the way V"), Role.LOAD, Role.COIL,
                circuit, each -> load(point, each), out);
        rows(point, "fuses", List.of("A", "of rating", "lost mV"), Role.FUSE, Role.BREAKER, circuit,
                each -> List.of(amps(point, each), each.rating() > 0
                        ? percent(Math.abs(point.amps(each)) / each.rating()) : "", milli(point.volts(each))), out);
        rows(point, "wires", List.of("A", "lost mV", "W", "C", "of ampacity", "A in a large bundle"), Role.WIRE,
                Role.LINK, circuit, each -> wire(solved, point, each), out);
        rows(point, "switches, contacts", List.of("A", "lost mV", "W"), Role.SWITCH, Role.RELAY_CONTACT, circuit,
                each -> List.of(amps(point, each), milli(point.volts(each)), watts(point, each)), out);
        rows(point, "contacts and grounds", List.of("A", "lost mV", "mW"), Role.CONTACT, Role.GROUND_JOINT, circuit,
                each -> List.of(amps(point, each), milli(point.volts(each)),
                        milli(point.volts(each) * point.amps(each))), out);
        if (point.solved() && !circuit.isEmpty()) {
            point.schematic().pieces().stream().filter(each -> each.role() == Role.LOAD && point.conducts(each)
                    && carries(point, each) && touches(point, each, circuit)).limit(BUDGETS)
                    .forEach(each -> budget(point, each, out));
        }
        if (point.solved()) {
            new FaultText(palette, width).append(solved, point, circuit, out);
        }
        if (point.mode().engine() == Engine.STOPPED && point.mode().states().values().stream()
                .noneMatch(each -> each.equals("run") || each.equals("on"))) {
            out.append("what flows from the battery: ").append(Figure.of(1000 * sum(point, Role.BATTERY), 1))
                    .append(" mA\n\n");
        }
    }

    /** What becomes of the voltage of the source on the way of a load, piece by piece. */
    private void budget(OperatingPoint point, Piece load, StringBuilder out) {
        List<Trail.Step> steps = Trail.of(point, load).steps();
        List<String> heads = new ArrayList<>(List.of("from source to ground by way of "
                + Cells.printable(load.subject().label())));
        List<List<String>> rows = new ArrayList<>();
        double sum = 0;
        for (Trail.Step step : steps) {
            heads.add(Cells.printable(step.piece().subject().label()) + owner(step.piece()));
            rows.add(List.of(Figure.of(step.amps(), 2), milli(step.drop()), Figure.of(step.after(), 3)));
            sum += step.drop();
        }
        heads.add("together");
        rows.add(List.of("", milli(sum), "of " + Figure.of(steps.getFirst().before() - steps.getLast().after(), 3)
                + " V"));
        table(heads, List.of("A", "loses mV", "V left"), rows, out);
    }

    private List<String> load(OperatingPoint point, Piece piece) {
        boolean lamp = isLit(piece);
        Trail trail = Trail.of(point, piece);
        return List.of(amps(point, piece), volts(point.volts(piece)), percent(point.share(piece)),
                lamp ? percent(Math.pow(Math.abs(point.share(piece)), LIGHT)) : "",
                Figure.of(trail.feed(), 2) + " + " + Figure.of(trail.back(), 2));
    }

    private List<String> wire(Solved solved, OperatingPoint point, Piece piece) {
        return List.of(amps(point, piece), milli(point.volts(piece)), watts(point, piece),
                Figure.of(point.celsius()[piece.index()], 0), isWire(piece)
                        ? percent(share(solved, point, piece)) : "", aircraft(solved, piece));
    }

    /** What the second basis allows, FAA AC 43.13-1B Table 11-9; nothing for classes below its lowest. */
    private String aircraft(Solved solved, Piece piece) {
        if (!(piece.model() instanceof Model.Copper copper) || piece.subject().wire().isEmpty()) {
            return "";
        }
        return solved.ratings().around(piece).classC().flatMap(classC -> aircraft.allowed(copper.size(), classC,
                solved.ratings().ambient(piece))).map(each -> Figure.of(each.amps(), 1)).orElse("");
    }

    private static boolean isWire(Piece piece) {
        return piece.role() == Role.WIRE && piece.model() instanceof Model.Copper;
    }

    private static double share(Solved solved, OperatingPoint point, Piece piece) {
        Optional<Allowance> allowed = solved.ratings().allowed(piece, solved.vehicle(), point.currents());
        return allowed.map(each -> Math.abs(point.amps(piece)) / each.amps()).orElse(0.0);
    }

    private void rows(OperatingPoint point, String head, List<String> columns, Role one, Role other, String circuit,
            Function<Piece, List<String>> cells, StringBuilder out) {
        List<String> names = new ArrayList<>(List.of(head));
        List<List<String>> rows = new ArrayList<>();
        for (Piece piece : point.schematic().pieces()) {
            boolean here = piece.role() == one || piece.role() == other;
            boolean asked = circuit.isEmpty() || touches(point, piece, circuit);
            if (here && asked && point.conducts(piece) && (carries(point, piece) || piece.role() == Role.BATTERY)) {
                names.add(Cells.printable(piece.subject().label()) + owner(piece));
                rows.add(cells.apply(piece));
            }
        }
        if (!rows.isEmpty()) {
            table(names, columns, rows, out);
        }
    }

    private static String owner(Piece piece) {
        return piece.subject().wire().isPresent() ? " of " + piece.subject().owner() : "";
    }

    /** Whether a piece is of a circuit, or meets one of its wires. */
    static boolean touches(OperatingPoint point, Piece piece, String circuit) {
        if (piece.subject().wire().isPresent()) {
            return piece.subject().wire().get().circuit().name().text().equals(circuit);
        }
        return Trail.of(point, piece).steps().stream().anyMatch(step -> step.piece().subject().wire()
                .filter(wire -> wire.circuit().name().text().equals(circuit)).isPresent());
    }

    private static boolean carries(OperatingPoint point, Piece piece) {
        return Math.abs(point.amps(piece)) > NOTHING;
    }

    private void table(List<String> heads, List<String> columns, List<List<String>> rows, StringBuilder out) {
        List<TextTable.Column> all = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            int at = i;
            List<TextTable.Cell> cells = rows.stream().map(row -> TextTable.Cell.word(row.get(at))).toList();
            if (!columns.get(i).isEmpty() || cells.stream().anyMatch(each -> !each.text().isEmpty())) {
                all.add(new TextTable.Column(columns.get(i), cells));
            }
        }
        new TextTable(heads, all, palette).append(width, out);
        out.append('\n');
    }

    private void remarks(Solved solved, StringBuilder out) {
        List<Remark> here = solved.schematic().remarks().stream()
                .filter(each -> !each.when().excludes(solved.vehicle())).toList();
        here.forEach(each -> out.append(palette.paint(Tone.NOTE, "note")).append(": ")
                .append(Cells.printable(each.subject().label())).append(": ").append(each.words()).append('\n'));
        out.append(here.isEmpty() ? "" : "\n");
    }

    private static String amps(OperatingPoint point, Piece piece) {
        return Figure.of(Math.abs(point.amps(piece)), 2);
    }

    private static String signed(double amps) {
        return Figure.of(amps, 2);
    }

    private static String volts(double volts) {
        return Figure.of(volts, 2);
    }

    private static String milli(double value) {
        return Figure.of(Math.abs(value) * 1000, 0);
    }

    private static String watts(OperatingPoint point, Piece piece) {
        return Figure.of(Math.abs(point.volts(piece) * point.amps(piece)), 2);
    }

    private static String percent(double share) {
        return Double.isInfinite(share) ? "none allowed" : Figure.of(share * 100, 0) + " %";
    }
}
