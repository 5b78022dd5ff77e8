// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.board;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.sheets.document.Point;

/**
 * Lays a tree like a fan, for trees that the tidier layout cannot lay without crossings. At each breakout the sector
 * that is left is shared out by the number of ends, and what goes there stays in its share; sectors of less than half a
 * turn are convex, so nothing ever crosses, whatever the lengths (the equal-angle way of drawing trees of given
 * lengths; J. Felsenstein, Inferring Phylogenies, 2004, chapter 34; from memory). A trunk goes straight on where its
 * share lets it. Pure; O(n log n).
 */
final class FanLayout {

    private final Map<String, List<Strand>> children = new HashMap<>();
    private final Map<String, Integer> ends = new HashMap<>();
    private final Map<String, List<Point>> paths = new LinkedHashMap<>();

    private FanLayout(List<Strand> strands) {
        strands.forEach(each -> children.computeIfAbsent(each.parent(), any -> new ArrayList<>()).add(each));
        children.values().forEach(each -> each.sort(Comparator.comparingDouble(Strand::station)));
    }

    /** The paths of strands, the main one first; the datum is at 0, 0 and the main one begins to the right. */
    static Map<String, List<Point>> paths(List<Strand> strands, Strand main) {
        FanLayout fan = new FanLayout(strands);
        List<Strand> roots = new ArrayList<>(fan.children.get(""));
        roots.remove(main);
        fan.lay(main, new Point(0, 0), 0, -Math.PI / 2, Math.PI / 2);
        double total = roots.stream().mapToInt(fan::weight).sum();
        double from = Math.PI / 2;
        for (Strand root : roots) {
            double to = from + Math.PI * fan.weight(root) / total;
            fan.lay(root, new Point(0, 0), (from + to) / 2, from, to);
            from = to;
        }
        return fan.paths;
    }

    /** Number of ends of a strand with all that hangs on it. */
    private int weight(Strand strand) {
        Integer known = ends.get(strand.name());
        if (known == null) {
            known = 1 + children.getOrDefault(strand.name(), List.of()).stream().mapToInt(this::weight).sum();
            ends.put(strand.name(), known);
        }
        return known;
    }

    private void lay(Strand strand, Point start, double direction, double low, double high) {
        List<Strand> leaving = children.getOrDefault(strand.name(), List.of());
        List<Point> path = new ArrayList<>(List.of(start));
        paths.put(strand.name(), path);
        double from = low;
        double to = high;
        double heading = direction;
        double at = 0;
        int left = weight(strand);
        for (int i = 0; i < leaving.size();) {
            double station = Math.min(leaving.get(i).station(), strand.length());
            if (station > at) {
                path.add(ahead(path.getLast(), heading, station - at));
                at = station;
            }
            List<Strand> here = new ArrayList<>();
            while (i < leaving.size() && Math.min(leaving.get(i).station(), strand.length()) <= at) {
                here.add(leaving.get(i++));
            }
            double share = (to - from) / left;
            for (Strand each : here) {
                int weight = weight(each);
                left -= weight;
                boolean below = heading - from > to - heading;
                double edge = below ? from + share * weight : to - share * weight;
                lay(each, path.getLast(), (edge + (below ? from : to)) / 2, below ? from : edge, below ? edge : to);
                from = below ? edge : from;
                to = below ? to : edge;
            }
            double margin = (to - from) / 8;
            heading = Math.max(from + margin, Math.min(heading, to - margin));
        }
        if (strand.length() > at || path.size() == 1) {
            path.add(ahead(path.getLast(), heading, strand.length() - at));
        }
    }

    private static Point ahead(Point from, double direction, double length) {
        return from.plus(length * Math.cos(direction), length * Math.sin(direction));
    }
}
