// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.loomwright.geometry.strip.Strip;
import org.loomwright.geometry.strip.StripLayout;

/** A strip as SVG within a page. What is marked is drawn thick, and says so in words with a link to what it is. */
final class StripSvg {

    private static final double BASELINE = 4;

    private final StringBuilder out = new StringBuilder();
    private final Map<String, List<Integer>> marks;
    private final String word;

    private StripSvg(Map<String, List<Integer>> marks, String word) {
        this.marks = marks;
        this.word = word;
    }

    /**
     * The element.
     *
     * @param id    of the title, once in a page
     * @param title what it shows, for those who do not see it
     * @param marks numbers of changes by run or breakout
     * @param word  what the marks say: {@code changed}
     */
    static String of(Strip strip, String id, String title, Map<String, List<Integer>> marks, String word) {
        StripSvg svg = new StripSvg(marks, word);
        double more = marks.isEmpty() ? 0 : 24 * StripLayout.CHARACTER;
        svg.out.append("<svg role=\"group\" aria-labelledby=\"").append(id).append("\" viewBox=\"0 0 ")
                .append(number(strip.width() + more)).append(' ').append(number(strip.height()))
                .append("\" width=\"").append(number(strip.width() + more)).append("\">\n<title id=\"").append(id)
                .append("\">").append(MatrixPage.escaped(title)).append("</title>\n");
        strip.posts().forEach(svg::post);
        strip.bars().forEach(svg::bar);
        return svg.out.append("</svg>\n").toString();
    }

    private void post(Strip.Post post) {
        line(post.name(), post.x(), post.y(), post.x(), post.top(), post.barrier() ? " barrier" : "");
        if (post.barrier()) {
            line(post.name(), post.x() - 4, post.y() + 5, post.x() + 4, post.y() - 5, "");
        }
        text(post.name(), post.x() + 6, post.top() + BASELINE, post.text());
    }

    private void bar(Strip.Bar bar) {
        if (!bar.trunk()) {
            line(bar.run(), bar.x(), bar.from(), bar.x(), bar.y(), "");
        }
        line(bar.run(), bar.x(), bar.y(), bar.end(), bar.y(), (bar.trunk() ? " trunk" : "")
                + (bar.known() ? "" : " open"));
        text(bar.run(), bar.end() + 6, bar.y() + BASELINE, bar.text() + (bar.known() ? "" : " (not to scale)"));
    }

    private void line(String name, double x, double y, double toX, double toY, String style) {
        out.append("<line class=\"run").append(style).append(marks.containsKey(name) ? " marked" : "")
                .append("\" x1=\"").append(number(x)).append("\" y1=\"").append(number(y)).append("\" x2=\"")
                .append(number(toX)).append("\" y2=\"").append(number(toY)).append("\"/>\n");
    }

    private void text(String name, double x, double y, String words) {
        List<Integer> numbers = marks.getOrDefault(name, List.of());
        out.append("<text").append(numbers.isEmpty() ? "" : " class=\"marked\"").append(" x=\"").append(number(x))
                .append("\" y=\"").append(number(y)).append("\">").append(MatrixPage.escaped(words));
        if (!numbers.isEmpty()) {
            out.append(" \u2013 ").append(word).append(": ").append(numbers.stream().limit(4).map(each ->
                    "<a href=\"#c" + each + "\">" + each + "</a>").collect(Collectors.joining(", ")))
                    .append(numbers.size() > 4 ? " ..." : "");
        }
        out.append("</text>\n");
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
