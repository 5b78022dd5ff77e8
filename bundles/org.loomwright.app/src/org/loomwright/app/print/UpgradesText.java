// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.UpgradeCircuits.Change;
import org.loomwright.app.UpgradeCircuits.Upgraded;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.survey.Fault;

/** What upgrades do to currents and voltages, before and after, for people. */
public final class UpgradesText {

    private final Palette palette;
    private final int width;

    public UpgradesText(Palette palette, int width) {
        this.palette = palette;
        this.width = width;
    }

    /** One table of figures and the faults of each upgrade. */
    public String of(List<Upgraded> all) {
        StringBuilder out = new StringBuilder();
        List<String> heads = new ArrayList<>(List.of("upgrade"));
        List<List<String>> rows = new ArrayList<>();
        for (Upgraded each : all) {
            heads.add(each.upgrade() + ", " + Cells.printable(each.fitted()));
            rows.add(List.of(shares(each.lamp()), shares(each.wire()), shares(each.fuse()), amps(each.battery())));
        }
        List<String> columns = List.of("least at a lamp, engine running", "most of ampacity", "most of a fuse",
                "battery gives A");
        List<TextTable.Column> table = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            int at = i;
            table.add(new TextTable.Column(columns.get(i), rows.stream()
                    .map(row -> TextTable.Cell.word(row.get(at))).toList()));
        }
        new TextTable(heads, table, palette).append(width, out);
        for (Upgraded each : all) {
            if (!each.gained().isEmpty() || !each.lost().isEmpty()) {
                out.append('\n').append(palette.paint(Tone.HEAD, each.upgrade() + ", "
                        + Cells.printable(each.fitted()))).append(": ").append(each.before()).append(" -> ")
                        .append(each.after()).append('\n');
                each.gained().forEach(fault -> line("gains", fault, out));
                each.lost().forEach(fault -> line("loses", fault, out));
            }
        }
        return out.append("\nOver all modes. Computed from what the sources state, not measured: check against the"
                + " vehicle in front of you; where the law,\nits maker or a licensed practitioner asks for more, do"
                + " that.\n")
                .toString();
    }

    private static void line(String verb, Fault fault, StringBuilder out) {
        out.append("  ").append(verb).append(' ').append(fault.rule()).append(": ")
                .append(Cells.printable(fault.words())).append('\n');
    }

    private static String shares(Change change) {
        return share(change.before()) + " -> " + share(change.after());
    }

    private static String share(double share) {
        return Double.isNaN(share) ? "-" : Figure.of(100 * share, 0) + " %";
    }

    private static String amps(Change change) {
        return one(change.before()) + " -> " + one(change.after());
    }

    private static String one(double amps) {
        return Double.isNaN(amps) ? "-" : Figure.of(amps, 1);
    }
}
