// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.SolveCircuits.Solved;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.fault.FaultStudy;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.protection.Withstand;
import org.loomwright.electric.survey.Awake;

/** What follows when something fails in one vehicle and mode, as tables for people. */
final class FaultText {

    private static final int MOST = 12;
    private static final int WAYS = 3;

    private final Palette palette;
    private final int width;

    FaultText(Palette palette, int width) {
        this.palette = palette;
        this.width = width;
    }

    void append(Solved solved, OperatingPoint point, String circuit, StringBuilder out) {
        FaultStudy study = FaultStudy.of(solved.schematic(), solved.vehicle(), point.mode(), solved.ratings());
        List<List<String>> rows = new ArrayList<>();
        List<String> ways = new ArrayList<>();
        List<String> heads = new ArrayList<>(List.of("if it opens"));
        for (FaultStudy.Opened each : study.opened()) {
            if (asked(point, each.piece(), circuit)) {
                heads.add(label(each.piece()));
                rows.add(List.of(names(each.awake().stream().map(Awake::load).toList()), names(each.dark())));
                each.awake().stream().limit(WAYS).forEach(one -> ways.add("  " + Cells.printable(label(each.piece())
                        + " open: " + one.words() + " by way of " + one.way()) + "\n"));
            }
        }
        table(heads, List.of("carries current though it is off", "goes dark"), rows, out);
        ways.forEach(out::append);
        out.append(ways.isEmpty() ? "" : "\n");
        heads = new ArrayList<>(List.of("dead short at the far end of"));
        rows = new ArrayList<>();
        for (FaultStudy.Shorted each : study.shorts()) {
            if (asked(point, each.wire(), circuit)) {
                heads.add(label(each.wire()) + " of " + each.wire().subject().owner());
                rows.add(List.of(Figure.of(each.least(), 0) + " to " + Figure.of(each.most(), 0),
                        each.device().map(FaultText::label).orElse(""),
                        each.ratio() > 0 ? Figure.of(each.ratio(), 1) : "",
                        each.seconds() > Withstand.ADIABATIC ? "over 5 s" : Figure.of(each.seconds(), 2) + " s",
                        each.verdict()));
            }
        }
        table(heads, List.of("A", "first device before it", "x its rating", "wire bears it", "cleared in time"), rows,
                out);
        heads = new ArrayList<>(List.of("contact, the most sensitive first"));
        rows = new ArrayList<>();
        for (FaultStudy.Worn each : study.worn()) {
            if (asked(point, each.piece(), circuit) && rows.size() < MOST) {
                heads.add(label(each.piece()));
                rows.add(List.of(Figure.of(Math.abs(point.amps(each.piece())), 2), Figure.of(each.now() * 1000, 0),
                        Figure.of(each.ohms() * 1000, 1), each.piece().rating() <= 0 ? "not stated"
                                : each.hot().isPresent() ? Figure.of(each.hot().getAsDouble() * 1000, 1) : "never"));
            }
        }
        table(heads, List.of("A", "loses mV", "loses 100 mV at mohm", "passes its rating at mohm"), rows, out);
    }

    private static boolean asked(OperatingPoint point, Piece piece, String circuit) {
        return circuit.isEmpty() || ElectricText.touches(point, piece, circuit);
    }

    private static String label(Piece piece) {
        return Cells.printable(piece.subject().label());
    }

    private static String names(List<Piece> pieces) {
        List<String> names = pieces.stream().map(FaultText::label).distinct().toList();
        return names.size() > 3 ? String.join("; ", names.subList(0, 3)) + " and " + (names.size() - 3) + " more"
                : String.join("; ", names);
    }

    private void table(List<String> heads, List<String> columns, List<List<String>> rows, StringBuilder out) {
        if (rows.isEmpty()) {
            return;
        }
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
