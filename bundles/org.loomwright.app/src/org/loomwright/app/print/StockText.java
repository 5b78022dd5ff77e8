// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.BrowseStock.Bay;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.Figure;

/** The stock for people: a list of its parts, or each part with its figures and where they come from. */
public final class StockText {

    private static final int WIDEST_VALUE = 44;

    private final Palette palette;

    public StockText(Palette palette) {
        this.palette = palette;
    }

    /**
     * One line of a part: what is stated, and where it comes from.
     *
     * @param label  keyword
     * @param value  what is stated
     * @param source where it comes from; empty when nothing is to be said
     */
    private record Row(String label, String value, String source) {
    }

    /** One line for each part. */
    public String list(List<Bay> bays) {
        int name = widest(bays.stream().flatMap(bay -> bay.parts().stream()).map(part -> part.name().text()).toList());
        int kind = widest(bays.stream().flatMap(bay -> bay.parts().stream()).map(part -> part.kind().word()).toList());
        StringBuilder out = new StringBuilder();
        for (Bay bay : bays) {
            out.append(out.isEmpty() ? "" : "\n").append(palette.paint(Tone.HEAD, bay.title())).append('\n');
            bay.parts().forEach(part -> out.append("  ").append(Cells.left(part.name().text(), name)).append("  ")
                    .append(Cells.left(part.kind().word(), kind)).append("  ").append(part.title()).append('\n'));
        }
        return out.toString();
    }

    /** Each part with all that it states. */
    public String details(List<Bay> bays) {
        StringBuilder out = new StringBuilder();
        bays.stream().flatMap(bay -> bay.parts().stream()).forEach(part -> {
            out.append(out.isEmpty() ? "" : "\n");
            details(part, out);
        });
        return out.toString();
    }

    private void details(Part part, StringBuilder out) {
        out.append(palette.paint(Tone.HEAD, part.kind().word() + " " + part.name())).append("  ").append(part.title())
                .append("  ").append(palette.paint(Tone.FAINT, "(" + part.span().file() + ":" + part.span().line()
                        + ")")).append('\n');
        List<Row> rows = rows(part);
        int label = widest(rows.stream().map(Row::label).toList());
        int value = widest(rows.stream().filter(row -> !row.source().isEmpty()).map(Row::value)
                .filter(text -> text.length() <= WIDEST_VALUE).toList());
        for (Row row : rows) {
            String stated = row.source().isEmpty() ? row.value()
                    : Cells.left(row.value(), value) + "  " + palette.paint(Tone.FAINT, row.source());
            out.append("  ").append(Cells.left(row.label(), label)).append("  ").append(stated).append('\n');
        }
    }

    private static List<Row> rows(Part part) {
        List<Row> rows = new ArrayList<>();
        part.base().ifPresent(base -> rows.add(new Row("like", base.text(), "")));
        part.words().stream().map(Fact::value).filter(word -> !isRemark(word))
                .forEach(word -> rows.add(new Row(word.kind().word(), word.text(), "")));
        part.figures().stream().map(Fact::value).forEach(figure -> rows.add(
                new Row(figure.kind().word(), range(figure), figure.basis())));
        part.sizes().forEach(size -> rows.add(new Row("size " + size.size(), size(size), size.basis())));
        if (!part.pins().isEmpty()) {
            rows.add(new Row(part.kind() == Part.Kind.HOUSING ? "cavities" : "pins", PartWords.pins(part), ""));
        }
        if (!part.states().isEmpty()) {
            rows.add(new Row("states", PartWords.names(part.states()), ""));
        }
        part.joins().forEach(join -> rows.add(new Row(join.protective() ? "protects" : "joins",
                PartWords.join(join), "")));
        part.words().stream().map(Fact::value).filter(StockText::isRemark).forEach(word -> rows.add(
                new Row(word.kind() == Part.WordKind.SOURCE ? "source" : "note", word.text(), "")));
        return rows;
    }

    private static boolean isRemark(Part.Word word) {
        return word.kind() == Part.WordKind.SOURCE || word.kind() == Part.WordKind.NOTE;
    }

    private static String range(Figure figure) {
        return figure.from() + figure.upTo().map(upTo -> " .. " + upTo).orElse("");
    }

    private static String size(Part.Size size) {
        return size.diameter().map(diameter -> diameter + " thick, ").orElse("")
                + PartWords.area(size.size()) + " mm2, " + PartWords.milliohms(size.size()) + " mohm/m";
    }

    private static int widest(List<String> texts) {
        return texts.stream().mapToInt(Cells::width).max().orElse(0);
    }
}
