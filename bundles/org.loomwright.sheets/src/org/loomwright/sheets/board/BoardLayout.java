// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.sheets.document.Point;

/**
 * Lays a tree on a board. The longest strand from the datum runs along the board, a second one the other way; what
 * leaves them stands up or hangs down in columns, in the order in which it leaves, so that nothing crosses: lines that
 * join two rows of points in the same order never do. Where that is too large for the board, the trunk is folded once,
 * and branches are folded up and down in hairpins of the least radius. What still does not fit is laid unfolded on the
 * board that would do. Branches on branches can cross where they are short; the columns are then made wider, and if
 * that does not help, the tree is laid like a fan, in which nothing can cross.
 *
 * <p>Takes it that the parents of strands exist and form a tree. Pure; O(n log n + points), and
 * quadratic at worst where paths are close to each other.
 */
public final class BoardLayout {

    /** Free edge of the board in mm. */
    public static final double EDGE = 40;

    private static final double SLANT = 40;
    private static final double LEAST_COLUMN = 16;
    private static final double RISE = 0.6;
    private static final double LESS = 0.8;
    private static final int ARC = 24;
    /** Shares of the board's width where a trunk turns, and of half its height for branches, tried one by one. */
    private static final double[] SHARES = {1, 0.85, 0.7, 0.55, 0.4};
    /** How many times wider the columns are made until nothing crosses. */
    private static final double[] SPREADS = {1, 1.4, 2, 3, 4};

    private final double column;
    private final double radius;

    /**
     * @param column least distance between two columns in mm
     * @param radius least radius of a bend in mm
     */
    public BoardLayout(double column, double radius) {
        this.column = Math.max(LEAST_COLUMN, column);
        this.radius = Math.max(column / 2, radius);
    }

    /** A strand with all that hangs on it. */
    private static final class Shoot {
        private final Strand strand;
        private final List<Shoot> left = new ArrayList<>();
        private final List<Shoot> right = new ArrayList<>();
        private double leftWidth;
        private double rightWidth;
        private int folds;

        Shoot(Strand strand) {
            this.strand = strand;
        }
    }

    /** Lays strands on a board of a size in mm. */
    public Board lay(List<Strand> strands, double width, double height) {
        if (strands.isEmpty()) {
            return new Board(2 * EDGE, 2 * EDGE, true, Map.of());
        }
        Board plain = plain(strands, width, height);
        if (plain.fits()) {
            return plain;
        }
        for (double turn : SHARES) {
            for (double room : SHARES) {
                Optional<Board> folded = folded(strands, width, height, turn, room);
                if (folded.isPresent()) {
                    return folded.get();
                }
            }
        }
        return plain;
    }

    /** With columns as narrow as nothing crosses; where that takes too much room, like a fan. */
    private Board plain(List<Strand> strands, double width, double height) {
        for (double spread : SPREADS) {
            Board board = new Attempt(strands, width, height, spread * column).board();
            if (!Crossings.any(board.paths().values())) {
                return board;
            }
        }
        return new Attempt(strands, width, height, column).fan();
    }

    /** Folded, when that fits and nothing crosses. */
    private Optional<Board> folded(List<Strand> strands, double width, double height, double turn, double room) {
        for (double spread : SPREADS) {
            Board board = new Attempt(strands, width, height, true, turn, room, spread * column).board();
            if (!board.fits()) {
                return Optional.empty();
            }
            if (!Crossings.any(board.paths().values())) {
                return Optional.of(board);
            }
        }
        return Optional.empty();
    }

    /** One try. */
    private final class Attempt {
        private final double width;
        private final double height;
        private final boolean fold;
        private final double turn;
        private final double room;
        private final double column;
        private final List<Strand> strands;
        private final Map<String, List<Strand>> children = new HashMap<>();
        private final Map<String, List<Point>> paths = new LinkedHashMap<>();
        private final Strand main;
        private final Strand back;

        Attempt(List<Strand> strands, double width, double height, double column) {
            this(strands, width, height, false, 1, 1, column);
        }

        Attempt(List<Strand> strands, double width, double height, boolean fold, double turn, double room,
                double column) {
            this.strands = strands;
            this.turn = turn;
            this.room = room;
            this.column = column;
            this.width = width - 2 * EDGE;
            this.height = height - 2 * EDGE;
            this.fold = fold;
            strands.forEach(each -> children.computeIfAbsent(each.parent(), any -> new ArrayList<>()).add(each));
            List<Strand> roots = children.getOrDefault("", List.of()).stream().sorted(Comparator
                    .comparing((Strand each) -> children.containsKey(each.name()) ? 0 : 1)
                    .thenComparing(Comparator.comparingDouble(Strand::length).reversed())).toList();
            main = roots.getFirst();
            back = roots.size() > 1 && children.containsKey(roots.get(1).name()) ? roots.get(1) : null;
        }

        Board fan() {
            paths.putAll(FanLayout.paths(strands, main));
            return framed();
        }

        Board board() {
            boolean twoRows = fold && back == null && main.length() > width;
            List<Point> forth = twoRows ? hairpin() : List.of(new Point(0, 0), new Point(main.length(), 0));
            paths.put(main.name(), forth);
            List<Shoot> up = new ArrayList<>();
            List<Shoot> down = new ArrayList<>();
            Map<Shoot, Point> starts = new HashMap<>();
            for (Strand root : children.get("")) {
                if (root != main && root != back) {
                    side(shoot(root), new Point(0, 0), twoRows, up, down, starts);
                }
            }
            for (Strand each : sorted(main.name())) {
                side(shoot(each), Board.at(forth, each.station()), twoRows, up, down, starts);
            }
            if (back != null) {
                List<Point> path = List.of(new Point(0, 0), new Point(-back.length(), 0));
                paths.put(back.name(), path);
                for (Strand each : sorted(back.name())) {
                    side(shoot(each), Board.at(path, each.station()), false, up, down, starts);
                }
            }
            grow(up, starts, -1);
            grow(down, starts, 1);
            return framed();
        }

        private List<Strand> sorted(String parent) {
            return children.getOrDefault(parent, List.of()).stream()
                    .sorted(Comparator.comparingDouble(Strand::station)).toList();
        }

        /** The trunk in two rows, with no breakout in the bend. */
        private List<Point> hairpin() {
            double bend = Math.PI * radius;
            double place = turn * width - radius - 1;
            List<Strand> leaving = sorted(main.name());
            for (int i = leaving.size() - 1; i >= 0; i--) {
                double station = leaving.get(i).station();
                if (station > place - 1 && station < place + bend + 1) {
                    place = station - bend - 2;
                }
            }
            if (place < radius || main.length() - place - bend < 0) {
                return List.of(new Point(0, 0), new Point(main.length(), 0));
            }
            List<Point> path = new ArrayList<>(List.of(new Point(0, 0)));
            arc(path, new Point(place, radius), -90, 90);
            path.add(new Point(place - left(path, main.length()), 2 * radius));
            return path;
        }

        private static double left(List<Point> path, double length) {
            return length - Board.length(path);
        }

        private Shoot shoot(Strand strand) {
            Shoot shoot = new Shoot(strand);
            List<Strand> leaving = sorted(strand.name());
            if (leaving.isEmpty() && fold) {
                double reach = room * height / 2 - SLANT - radius - EDGE;
                shoot.folds = reach > 0 ? (int) Math.max(0, Math.ceil((strand.length() - SLANT) / reach) - 1) : 0;
            }
            // the highest is the nearest, so those from below pass outside
            for (int i = leaving.size() - 1; i >= 0; i--) {
                Shoot child = shoot(leaving.get(i));
                ((leaving.size() - i) % 2 == 1 ? shoot.right : shoot.left).add(child);
            }
            shoot.leftWidth = column / 2 + shoot.left.stream().mapToDouble(e -> e.leftWidth + e.rightWidth).sum();
            shoot.rightWidth = column / 2 + 2 * radius * shoot.folds
                    + shoot.right.stream().mapToDouble(e -> e.leftWidth + e.rightWidth).sum();
            return shoot;
        }

        /** Puts what leaves a trunk up or down, by turns; in two rows the first stands and the second hangs. */
        private void side(Shoot shoot, Point at, boolean twoRows, List<Shoot> up, List<Shoot> down,
                Map<Shoot, Point> starts) {
            boolean stands = twoRows ? at.y() < radius : up.size() <= down.size();
            (stands ? up : down).add(shoot);
            starts.put(shoot, at);
        }

        private void grow(List<Shoot> shoots, Map<Shoot, Point> starts, int way) {
            List<Shoot> order = shoots.stream().sorted(Comparator.comparingDouble((Shoot each) ->
                    starts.get(each).x())).toList();
            double[] columns = columns(order.stream().mapToDouble(each -> starts.get(each).x()).toArray(),
                    order.stream().mapToDouble(each -> each.leftWidth).toArray(),
                    order.stream().mapToDouble(each -> each.rightWidth).toArray());
            double slant = SLANT;
            for (int i = 0; i < columns.length; i++) {
                slant = Math.max(slant, order.get(i).folds > 0 ? radius + SLANT : 0);
                slant = Math.max(slant, Math.abs(columns[i] - starts.get(order.get(i)).x()) * RISE);
            }
            for (int i = 0; i < columns.length; i++) {
                Point start = starts.get(order.get(i));
                stand(order.get(i), start, columns[i], start.y() + way * slant, way);
            }
        }

        /** Columns near where they begin, in the same order, with room between them. */
        private static double[] columns(double[] wished, double[] left, double[] right) {
            int count = wished.length;
            double[] forth = wished.clone();
            double[] back = wished.clone();
            for (int i = 1; i < count; i++) {
                forth[i] = Math.max(forth[i], forth[i - 1] + right[i - 1] + left[i]);
            }
            for (int i = count - 2; i >= 0; i--) {
                back[i] = Math.min(back[i], back[i + 1] - left[i + 1] - right[i]);
            }
            double[] columns = new double[count];
            for (int i = 0; i < count; i++) {
                columns[i] = (forth[i] + back[i]) / 2;
            }
            return columns;
        }

        /** Lays a strand: aslant to its column, then along it, and what hangs on it beside it. */
        private void stand(Shoot shoot, Point start, double x, double y, int way) {
            double length = shoot.strand.length();
            Point corner = new Point(x, y);
            double aslant = start.to(corner);
            List<Point> path = new ArrayList<>(List.of(start));
            if (length <= aslant) {
                double share = aslant == 0 ? 0 : length / aslant;
                path.add(new Point(start.x() + (x - start.x()) * share, start.y() + (y - start.y()) * share));
            } else {
                path.add(corner);
                upright(shoot, path, length - aslant, way);
            }
            paths.put(shoot.strand.name(), path);
            beside(shoot.left, path, x, -1, way);
            beside(shoot.right, path, x, 1, way);
        }

        /** What hangs on a strand at one side, the nearest first: each next one stays below all of the one before. */
        private void beside(List<Shoot> shoots, List<Point> parent, double x, int aside, int way) {
            double at = x + aside * column / 2;
            double below = Double.MAX_VALUE;
            for (Shoot child : shoots) {
                at += aside * (aside < 0 ? child.rightWidth : child.leftWidth);
                Point from = Board.at(parent, child.strand.station());
                double most = below - way * from.y();
                double rise = Math.max(0, Math.min(Math.max(SLANT, RISE * Math.abs(at - from.x())), most));
                stand(child, from, at, from.y() + way * rise, way);
                below = way * from.y() + LESS * rise;
                at += aside * (aside < 0 ? child.leftWidth : child.rightWidth);
            }
        }

        /** The rest of a strand along its column, in hairpins where it is folded. */
        private void upright(Shoot shoot, List<Point> path, double rest, int way) {
            double bends = shoot.folds * ARC * 2 * radius * Math.sin(Math.PI / (2 * ARC));
            if (shoot.folds == 0 || rest <= bends) {
                Point last = path.getLast();
                path.add(new Point(last.x(), last.y() + way * rest));
                return;
            }
            double pass = (rest - bends) / (shoot.folds + 1);
            int direction = way;
            for (int i = 0; i <= shoot.folds; i++) {
                Point last = path.getLast();
                Point end = new Point(last.x(), last.y() + direction * pass);
                path.add(end);
                if (i < shoot.folds) {
                    bend(path, end, direction);
                    direction = -direction;
                }
            }
        }

        private void bend(List<Point> path, Point end, int direction) {
            Point centre = new Point(end.x() + radius, end.y());
            for (int i = 1; i <= ARC; i++) {
                double angle = Math.PI - Math.PI * i / ARC;
                path.add(new Point(centre.x() + radius * Math.cos(angle),
                        centre.y() + direction * radius * Math.sin(angle)));
            }
        }

        private void arc(List<Point> path, Point centre, double from, double to) {
            for (int i = 0; i <= ARC; i++) {
                double angle = Math.toRadians(from + (to - from) * i / ARC);
                path.add(new Point(centre.x() + radius * Math.cos(angle), centre.y() + radius * Math.sin(angle)));
            }
        }

        /** Moves everything into the board and measures it. */
        private Board framed() {
            double left = Double.MAX_VALUE;
            double top = Double.MAX_VALUE;
            double right = -Double.MAX_VALUE;
            double bottom = -Double.MAX_VALUE;
            for (List<Point> path : paths.values()) {
                for (Point point : path) {
                    left = Math.min(left, point.x());
                    right = Math.max(right, point.x());
                    top = Math.min(top, point.y());
                    bottom = Math.max(bottom, point.y());
                }
            }
            double x = EDGE - left;
            double y = EDGE - top;
            Map<String, List<Point>> moved = new LinkedHashMap<>();
            paths.forEach((name, path) -> moved.put(name, path.stream().map(each -> each.plus(x, y)).toList()));
            boolean fits = right - left <= width && bottom - top <= height;
            return new Board(right - left + 2 * EDGE, bottom - top + 2 * EDGE, fits, moved);
        }
    }
}
