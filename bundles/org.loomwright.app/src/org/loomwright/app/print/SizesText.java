// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.SizeCircuits.Sized;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.sizing.Sizes;

/** The smallest gauges and the least fuses that would do, as tables for people. */
public final class SizesText {

    private static final String CAUTION = "Computed from what the sources state, with the bundles as they are now;"
            + " crimp ranges, seals and mechanical strength are not\nlooked at. Nothing here complies with a law:"
            + " the maker's figures, local codes and licensed practice have the last word.\n";

    private final Palette palette;
    private final int width;

    public SizesText(Palette palette, int width) {
        this.palette = palette;
        this.width = width;
    }

    /** Tables of one set of harnesses. */
    public String of(Sized sized) {
        StringBuilder out = new StringBuilder();
        var platform = sized.schematic().fitment().platform().platform();
        out.append(palette.paint(Tone.HEAD, (platform.title().isEmpty() ? platform.name().text() : platform.title())
                + ": " + sized.vehicles() + "; " + sized.schematic().fitment().words())).append("\n\n");
        fuses(sized.sizes(), out);
        wires(sized.sizes(), out);
        out.append(sized.solves()).append(" networks solved");
        out.append(sized.bounded() ? "; bounded: some vehicles were left out, there are too many\n" : "\n");
        return out.append(CAUTION).toString();
    }

    private void fuses(Sizes sizes, StringBuilder out) {
        List<String> heads = new ArrayList<>(List.of("fuse"));
        List<List<String>> rows = new ArrayList<>();
        for (Sizes.OfFuse each : sizes.fuses()) {
            Piece device = each.demand().device();
            heads.add(Cells.printable(device.subject().label()) + " of " + device.subject().owner());
            rows.add(List.of(device.rating() > 0 ? Figure.of(device.rating()) + " A" : "",
                    Figure.of(each.demand().amps(), 2), each.demand().mode(), each.least().isPresent()
                            ? Figure.of(each.least().getAsDouble()) + " A" : "none is made"));
        }
        table(heads, List.of("now", "carries A", "in mode", "least that will do"), rows, out);
    }

    private void wires(Sizes sizes, StringBuilder out) {
        List<String> heads = new ArrayList<>(List.of("wire"));
        List<List<String>> rows = new ArrayList<>();
        for (Sizes.OfWire each : sizes.wires()) {
            heads.add(Cells.printable(each.demand().wire().subject().element()) + " of "
                    + each.demand().wire().subject().owner());
            rows.add(List.of(each.now().toString(), Figure.of(each.demand().amps(), 2),
                    each.least().map(Object::toString).orElse("none"), each.tooSmall() ? "too small now" : "",
                    Cells.printable(each.decides())));
        }
        table(heads, List.of("now", "A", "smallest that will do", "", "decided by"), rows, out);
    }

    private void table(List<String> heads, List<String> columns, List<List<String>> rows, StringBuilder out) {
        if (!rows.isEmpty()) {
            List<TextTable.Column> all = new ArrayList<>();
            for (int i = 0; i < columns.size(); i++) {
                int at = i;
                all.add(new TextTable.Column(columns.get(i), rows.stream()
                        .map(row -> TextTable.Cell.word(row.get(at))).toList()));
            }
            new TextTable(heads, all, palette).append(width, out);
            out.append('\n');
        }
    }
}
