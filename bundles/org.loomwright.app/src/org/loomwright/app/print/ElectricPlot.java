// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.loomwright.app.SolveCircuits.Solved;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.Trail;

/** The voltage along a circuit from its source to ground, as an SVG drawing. */
public final class ElectricPlot {

    private static final int LEFT = 56;
    private static final int TOP = 64;
    private static final int STEP = 26;
    private static final int HEIGHT = 260;
    private static final int LABELS = 230;
    private static final int LEAST = 480;
    private static final int MANY = 8;

    private ElectricPlot() {
    }

    /**
     * Draws the way of the load that takes the most current through a circuit; of all loads where none is named.
     *
     * @return empty when nothing flows through that circuit in the mode
     */
    public static Optional<String> of(Solved solved, OperatingPoint point, String circuit) {
        return point.schematic().pieces().stream()
                .filter(piece -> piece.role() == Role.LOAD && point.conducts(piece))
                .filter(piece -> Math.abs(point.amps(piece)) > 1e-3 && Math.abs(point.volts(piece)) > 0.5)
                .filter(piece -> circuit.isEmpty() || ElectricText.touches(point, piece, circuit))
                .max(Comparator.comparingDouble((Piece piece) -> Math.abs(point.amps(piece)))
                        .thenComparing(piece -> -piece.index()))
                .map(load -> draw(solved, point, load));
    }

    private static String draw(Solved solved, OperatingPoint point, Piece load) {
        List<Trail.Step> steps = Trail.of(point, load).steps();
        double top = steps.stream().mapToDouble(Trail.Step::before).max().orElse(1) * 1.05;
        int width = Math.max(LEAST, LEFT + STEP * steps.size() + LABELS / 2);
        Xml svg = new Xml();
        svg.begin("svg", "xmlns", "http://www.w3.org/2000/svg", "width", width, "height", TOP + HEIGHT + LABELS,
                "font-family", "sans-serif", "font-size", 11);
        svg.empty("rect", "width", "100%", "height", "100%", "fill", "#ffffff");
        svg.text("text", load.subject().label() + ": voltage from source to ground", "x", LEFT, "y", 18, "font-size",
                14);
        svg.text("text", solved.words() + "; " + solved.schematic().fitment().words() + "; mode "
                + point.mode().name(), "x", LEFT, "y", 34);
        for (double volts = 0; volts < top; volts += top > MANY ? 2 : 1) {
            int y = y(volts, top);
            svg.empty("line", "x1", LEFT, "x2", width - 20, "y1", y, "y2", y, "stroke", "#dddddd");
            svg.text("text", Figure.of(volts, 0) + " V", "x", LEFT - 8, "y", y + 4, "text-anchor", "end");
        }
        List<String> points = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Trail.Step step = steps.get(i);
            points.add((LEFT + i * STEP) + "," + y(step.before(), top));
            points.add((LEFT + (i + 1) * STEP) + "," + y(step.after(), top));
            step(svg, step, i);
        }
        svg.empty("polyline", "fill", "none", "stroke", "#0060a0", "stroke-width", 2, "points",
                String.join(" ", points));
        svg.end("svg");
        return svg.toString();
    }

    private static void step(Xml svg, Trail.Step step, int i) {
        int x = LEFT + i * STEP + STEP / 2;
        boolean load = step.piece().role() == Role.LOAD;
        svg.text("text", step.piece().subject().label(), "transform", "translate(" + (x - 4) + " "
                + (TOP + HEIGHT + 14) + ") rotate(60)", "fill", load ? "#a03000" : "#000000");
        svg.text("text", load ? Figure.of(step.drop(), 1) + " V" : Figure.of(step.drop() * 1000, 0) + " mV", "x", x,
                "y", TOP - (i % 2 == 0 ? 4 : 14), "text-anchor", "middle", "font-size", 9);
    }

    private static int y(double volts, double top) {
        return (int) Math.round(TOP + HEIGHT - volts / top * HEIGHT);
    }
}
