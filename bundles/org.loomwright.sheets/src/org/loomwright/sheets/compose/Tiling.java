// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.sheets.compose.LabelRoom.Box;
import org.loomwright.sheets.document.Drawing;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Mark.Stroke;
import org.loomwright.sheets.document.Mark.Text;
import org.loomwright.sheets.document.Point;
import org.loomwright.sheets.page.Typeface;

/**
 * Cuts a board into sheets of paper at full size. Neighbours overlap; a cross in each corner of the overlap is on all
 * sheets that meet there, and every sheet has a ruler of 100 mm to check the printer with.
 *
 * @param width  room for a sheet's content in mm
 * @param height room for a sheet's content in mm
 */
record Tiling(double width, double height) {

    /** Paper that two neighbours share in mm. */
    static final double OVERLAP = 10;
    /** Length of the printed ruler in mm. */
    static final double RULER = 100;

    private static final double FOOT = 11;
    private static final double POINTS = 8;

    private double across() {
        return width - OVERLAP;
    }

    private double down() {
        return bottom() - OVERLAP;
    }

    /** Room in mm that the board has on a sheet from top to bottom, above the ruler. */
    double bottom() {
        return height - FOOT;
    }

    int columns(double board) {
        return (int) Math.max(1, Math.ceil((board - OVERLAP) / across()));
    }

    int rows(double board) {
        return (int) Math.max(1, Math.ceil((board - OVERLAP) / down()));
    }

    /** Whether a box lies whole on one sheet. */
    boolean holds(Box box) {
        return holds(box.left(), box.right(), across(), width) && holds(box.top(), box.bottom(), down(), bottom());
    }

    private static boolean holds(double from, double to, double step, double size) {
        double start = Math.floor(from / step) * step;
        return to <= start + size || start >= step && to <= start - step + size;
    }

    /** A sheet by its row and column, counted from 1, and where on the board its left top corner is. */
    record Sheet(int row, int column, Point corner, Drawing drawing) {
    }

    /** The sheets that something lies on, row by row from the top left. */
    List<Sheet> cut(Drawing board, Typeface face) {
        List<Sheet> sheets = new ArrayList<>();
        int rows = rows(board.height());
        int columns = columns(board.width());
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                Point corner = new Point(column * across(), row * down());
                Optional<Drawing> sheet = sheet(board, row, column, rows, columns, face);
                if (sheet.isPresent()) {
                    sheets.add(new Sheet(row + 1, column + 1, corner, sheet.get()));
                }
            }
        }
        return sheets;
    }

    private Optional<Drawing> sheet(Drawing board, int row, int column, int rows, int columns, Typeface face) {
        double x = column * across();
        double y = row * down();
        double bottom = bottom();
        Clip clip = new Clip(x, y, x + width, y + bottom, face);
        List<Mark> marks = new ArrayList<>();
        board.marks().forEach(mark -> clip.of(mark).forEach(each -> marks.add(each.moved(-x, -y))));
        if (marks.stream().noneMatch(each -> each instanceof Stroke stroke && stroke.ink().equals(BoardDrawing.BUNDLE)
                || each instanceof Text)) {
            return Optional.empty();
        }
        for (double cx : new double[] {OVERLAP / 2, width - OVERLAP / 2}) {
            for (double cy : new double[] {OVERLAP / 2, bottom - OVERLAP / 2}) {
                marks.add(Stroke.line(cx - 4, cy, cx + 4, cy, 0.2, Ink.BLACK));
                marks.add(Stroke.line(cx, cy - 4, cx, cy + 4, 0.2, Ink.BLACK));
            }
        }
        ruler(bottom + 4, marks);
        String words = "Row " + (row + 1) + " of " + rows + ", column " + (column + 1) + " of " + columns
                + ". Print at 100 %: the ruler is " + Math.round(RULER) + " mm long.";
        marks.add(new Text(new Point(RULER + 6, bottom + 8), POINTS, true, words));
        return Optional.of(new Drawing(width, height, marks));
    }

    private static void ruler(double y, List<Mark> marks) {
        marks.add(Stroke.line(0, y, RULER, y, 0.3, Ink.BLACK));
        for (int mm = 0; mm <= RULER; mm += 5) {
            marks.add(Stroke.line(mm, y, mm, y + (mm % 50 == 0 ? 4 : mm % 10 == 0 ? 2.6 : 1.4), mm % 50 == 0 ? 0.3
                    : 0.15, Ink.BLACK));
        }
    }
}
