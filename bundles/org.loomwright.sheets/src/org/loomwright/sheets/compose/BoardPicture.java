// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Typeface;

/**
 * The formboard of a harness for a screen: the drawing that is printed, and where each trunk and branch runs on it.
 * Immutable.
 *
 * @param drawing the board, in mm
 * @param fits    whether the board that was asked for does; if not, one that would do is drawn
 * @param paths   the way of each trunk and branch, by name
 */
public record BoardPicture(Drawing drawing, boolean fits, Map<String, List<Point>> paths) {

    private static final double ONE_SHEET = 1e7;

    public BoardPicture {
        paths = Collections.unmodifiableMap(new LinkedHashMap<>(paths));
    }

    /**
     * Lays a harness out as for print.
     *
     * @param width  of the board in mm
     * @param height of the board in mm
     */
    public static BoardPicture of(LaidHarness harness, double width, double height) {
        Boarding boarding = Boarding.of(harness, width, height);
        return new BoardPicture(BoardDrawing.of(boarding, new Typeface(), new Tiling(ONE_SHEET, ONE_SHEET)),
                boarding.board().fits(), boarding.board().paths());
    }

    /** The trunk or branch that runs nearest to a point, no further than so many mm away. Linear in their points. */
    public Optional<String> nearest(Point point, double within) {
        String best = null;
        double least = within;
        for (Map.Entry<String, List<Point>> each : paths.entrySet()) {
            List<Point> path = each.getValue();
            for (int i = 1; i < path.size(); i++) {
                double away = away(point, path.get(i - 1), path.get(i));
                if (away <= least && (best == null || away < least)) {
                    least = away;
                    best = each.getKey();
                }
            }
        }
        return Optional.ofNullable(best);
    }

    private static double away(Point point, Point from, Point to) {
        double length = from.to(to);
        double share = length == 0 ? 0 : ((point.x() - from.x()) * (to.x() - from.x())
                + (point.y() - from.y()) * (to.y() - from.y())) / (length * length);
        double part = Math.clamp(share, 0, 1);
        return point.to(new Point(from.x() + part * (to.x() - from.x()), from.y() + part * (to.y() - from.y())));
    }
}
