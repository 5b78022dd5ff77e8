// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;

/** What a part is, with its figures and where they come from. */
final class PartHover {

    private static final int MOST_SIZES = 12;

    private PartHover() {
    }

    static String describe(Moment moment, String name, List<Row> rows) {
        Optional<Part> found = moment.part(name);
        if (found.isEmpty()) {
            return "part " + name;
        }
        Part part = found.get();
        part.base().ifPresent(base -> rows.add(new Row("like", base.text())));
        part.words().stream().map(Fact::value).filter(word -> !isRemark(word))
                .forEach(word -> rows.add(new Row(word.kind().word(), word.text())));
        part.figures().stream().map(Fact::value).forEach(figure -> rows.add(new Row(figure.kind().word(),
                figure.from() + figure.upTo().map(upTo -> " .. " + upTo).orElse("")
                        + (figure.basis().isEmpty() ? "" : " (" + figure.basis() + ")"))));
        sizes(part, rows);
        if (!part.pins().isEmpty()) {
            rows.add(new Row(part.kind() == Part.Kind.HOUSING ? "cavities" : "pins", String.join(", ",
                    part.pins().stream().map(PartHover::words).toList())));
        }
        if (!part.states().isEmpty()) {
            rows.add(new Row("states", String.join(", ", part.states().stream().map(Name::text).toList())));
        }
        part.joins().forEach(join -> rows.add(new Row(join.protective() ? "protects" : "joins", join.from() + " to "
                + join.to() + join.through().map(through -> " through " + through).orElse("")
                + (join.states().isEmpty() ? "" : " while " + String.join(", ",
                        join.states().stream().map(Name::text).toList())))));
        part.words().stream().map(Fact::value).filter(PartHover::isRemark)
                .forEach(word -> rows.add(new Row(word.kind() == Part.WordKind.NOTE ? "note" : "figures from",
                        word.text())));
        if (part.span().file().startsWith("stock:")) {
            rows.add(new Row("", "a part of the stock"));
        }
        return part.kind().word() + " " + name + (part.title().isEmpty() ? "" : ", " + part.title());
    }

    private static boolean isRemark(Part.Word word) {
        return word.kind() == Part.WordKind.SOURCE || word.kind() == Part.WordKind.NOTE;
    }

    private static String words(Part.Pin pin) {
        return pin.name() + (pin.title().isEmpty() ? "" : " \"" + pin.title() + "\"");
    }

    private static void sizes(Part part, List<Row> rows) {
        List<String> sizes = new ArrayList<>();
        part.sizes().stream().limit(MOST_SIZES).forEach(size -> sizes.add(size.size()
                + size.diameter().map(diameter -> " (" + diameter + " thick)").orElse("")));
        int more = part.sizes().size() - sizes.size();
        if (!sizes.isEmpty()) {
            rows.add(new Row("sizes", String.join(", ", sizes) + (more > 0 ? " and " + more + " more" : "")));
        }
    }

    /** A pin or cavity: its title, and what is in it if it is one of a connector of a single drawing. */
    static String pin(Moment moment, Symbol symbol, List<Row> rows) {
        Optional<Part> part = moment.part(symbol.owner());
        part.stream().flatMap(each -> each.pins().stream()).filter(pin -> pin.name().text().equals(symbol.name()))
                .filter(pin -> !pin.title().isEmpty()).forEach(pin -> rows.add(new Row("", pin.title())));
        part.stream().flatMap(each -> each.joins().stream())
                .filter(join -> join.from().text().equals(symbol.name()) || join.to().text().equals(symbol.name()))
                .forEach(join -> rows.add(new Row(join.protective() ? "protects" : "joins", join.from() + " to "
                        + join.to() + join.through().map(through -> " through " + through).orElse(""))));
        boolean housing = part.filter(each -> each.kind() == Part.Kind.HOUSING).isPresent();
        return (housing ? "cavity " : "pin ") + symbol.name() + " of " + symbol.owner();
    }
}
