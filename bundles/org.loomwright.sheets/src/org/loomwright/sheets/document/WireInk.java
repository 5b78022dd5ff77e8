// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How a wire colour is drawn: a bar of the base colour with the tracer along it. The code is always written beside it,
 * so that nothing is lost without colour. A colour that no standard code stands for is drawn white, crossed out.
 */
public final class WireInk {

    private static final Map<String, Ink> INKS = Map.ofEntries(Map.entry("BK", new Ink(20, 20, 20)),
            Map.entry("BN", new Ink(122, 72, 34)), Map.entry("RD", new Ink(204, 24, 30)),
            Map.entry("OG", new Ink(240, 130, 20)), Map.entry("YE", new Ink(248, 216, 32)),
            Map.entry("GN", new Ink(24, 140, 60)), Map.entry("BU", new Ink(24, 84, 180)),
            Map.entry("VT", new Ink(124, 54, 150)), Map.entry("GY", new Ink(150, 150, 150)),
            Map.entry("WH", new Ink(255, 255, 255)), Map.entry("PK", new Ink(244, 156, 184)),
            Map.entry("GD", new Ink(200, 164, 60)), Map.entry("TQ", new Ink(60, 190, 190)),
            Map.entry("SR", new Ink(196, 200, 206)), Map.entry("LG", new Ink(140, 208, 110)));
    private static final String GREEN_YELLOW = "GNYE";
    private static final double FRAME = 0.15;

    private WireInk() {
    }

    /** The ink of a base colour or tracer; empty for a code without one. */
    public static Optional<Ink> of(String code) {
        return Optional.ofNullable(INKS.get(code));
    }

    /** The base colour of {@code BU/RD}; white where it has no ink. */
    public static Ink base(String code) {
        return of(code.split("/", 2)[0]).orElse(code.startsWith(GREEN_YELLOW) ? INKS.get("GN") : Ink.WHITE);
    }

    /** The ink of the tracer of {@code BU/RD}; empty for a wire of one colour. */
    public static Optional<Ink> tracer(String code) {
        String[] parts = code.equals(GREEN_YELLOW) ? new String[] {"GN", "YE"} : code.split("/", 2);
        return parts.length < 2 ? Optional.empty() : Optional.of(of(parts[1]).orElse(Ink.WHITE));
    }

    /** A bar, lying or standing, with its tracer along the middle. */
    public static List<Mark> bar(String code, double x, double y, double width, double height) {
        String[] parts = code.equals(GREEN_YELLOW) ? new String[] {"GN", "YE"} : code.split("/", 2);
        List<Mark> marks = new ArrayList<>();
        Optional<Ink> base = of(parts[0]);
        marks.add(Mark.Fill.box(x, y, width, height, base.orElse(Ink.WHITE)));
        if (parts.length > 1) {
            Ink tracer = of(parts[1]).orElse(Ink.WHITE);
            marks.add(width >= height ? Mark.Fill.box(x, y + height / 3, width, height / 3, tracer)
                    : Mark.Fill.box(x + width / 3, y, width / 3, height, tracer));
        }
        if (base.isEmpty()) {
            marks.add(Mark.Stroke.line(x, y + height, x + width, y, FRAME, Ink.GREY));
        }
        marks.add(Mark.Stroke.frame(x, y, width, height, FRAME, Ink.GREY));
        return marks;
    }
}
