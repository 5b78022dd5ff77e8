// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.hover;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Colours;
import org.loomwright.ide.hover.Hover.Row;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Slot.Sort;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.SizeSystem;

/** What a wire size or a colour code means. */
final class Figures {

    private static final double MILLI = 1000;

    private Figures() {
    }

    record Figure(String title, List<Row> rows) {
    }

    static Optional<Figure> of(Moment moment, WordLines lines, Line line, Word word) {
        if (word.slot().sort() == Sort.COLOUR) {
            Part part = moment.project().parts().get(word.text());
            String name = part == null ? Colours.nameOf(word.text())
                    : part.word(Part.WordKind.CALLED).orElse(part.title());
            return name.isEmpty() ? Optional.empty() : Optional.of(new Figure("colour " + word.text() + ", " + name,
                    part == null ? List.of(new Row("source", "IEC 60757")) : List.of()));
        }
        String outer = word.slot().outer();
        if (outer.equals("Wire.size") || outer.equals("SizeFact.size") || outer.equals("SizeRow.size")) {
            return size(line, outer);
        }
        return Optional.empty();
    }

    private static Optional<Figure> size(Line line, String outer) {
        StringBuilder number = new StringBuilder();
        String unit = "";
        for (Word word : line.words()) {
            if (word.slot().outer().equals(outer)) {
                unit = word.slot().sort() == Sort.UNIT ? word.text() : unit;
                number.append(word.slot().sort() == Sort.UNIT ? "" : word.text());
            }
        }
        Optional<SizeSystem> system = SizeSystem.ofSymbol(unit);
        if (system.isEmpty()) {
            return Optional.empty();
        }
        return ConductorSize.parse(number.toString(), system.get()).optional().map(size -> {
            List<Row> rows = new ArrayList<>();
            rows.add(new Row("cross-section", figure(size.areaMm2()) + " mm2"));
            rows.add(new Row("copper at 20 C", figure(size.ohmPerMetre20() * MILLI) + " mohm/m"));
            rows.add(new Row("source", size.basis()));
            return new Figure("wire size " + size + ", " + system.get().words(), rows);
        });
    }

    private static String figure(double value) {
        return new java.math.BigDecimal(value).round(new java.math.MathContext(3)).stripTrailingZeros()
                .toPlainString();
    }
}
