// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.VehicleWords;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.app.print.TextTable.Cell;
import org.loomwright.app.print.TextTable.Column;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitCell;
import org.loomwright.fit.FitColumn;
import org.loomwright.fit.FitReport;
import org.loomwright.fit.FitStatus;
import org.loomwright.quantity.Length;

/**
 * The fit of one harness as a table: a row for each place, a column for each drawing, in each cell the margin. Where
 * the vehicles of a drawing differ, a cell shows the worst of them.
 */
public final class FitMatrix {

    private static final String SOME_CAPPED = "c";
    private static final Comparator<FitCell> WORSE = Comparator.comparing(FitCell::status).thenComparing(
            cell -> cell.figures().map(figures -> figures.margin().negated()).orElse(Length.ZERO));

    private final Judged judged;
    private final FitReport report;
    private final int rows;
    private final Map<String, Condition> drawings = new LinkedHashMap<>();
    private final Set<FitStatus> seen = EnumSet.noneOf(FitStatus.class);
    private boolean someCapped;

    private FitMatrix(Judged judged) {
        this.judged = judged;
        report = judged.report();
        rows = report.problem().rows().size();
        for (FitColumn column : report.problem().columns()) {
            drawings.merge(column.drawing(), column.vehicles(), Condition::or);
        }
    }

    /**
     * The table with its legend; empty for a harness of which no covered drawing can be judged.
     *
     * @param width columns of the terminal that it may take; a wider table goes on below
     */
    public static String of(Judged judged, Palette palette, int width) {
        FitMatrix matrix = new FitMatrix(judged);
        if (matrix.drawings.isEmpty()) {
            return "";
        }
        StringBuilder out = new StringBuilder();
        new TextTable(matrix.heads(), matrix.columns(), palette).append(width, out);
        matrix.legend(out);
        return out.toString();
    }

    private List<String> heads() {
        List<String> heads = new ArrayList<>(List.of("margin in mm"));
        report.problem().rows().forEach(row ->
                heads.add(row.branch().isEmpty() ? row.place() : row.place() + " (" + row.branch() + ")"));
        return heads;
    }

    private List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        drawings.keySet().forEach(drawing -> columns.add(column(drawing, row -> cell(row, drawing))));
        columns.add(column("least", this::least));
        columns.add(column("bound by", row -> Cell.word(tightest(row)
                .map(cell -> report.problem().columns().get(cell.column()).drawing()).orElse(""))));
        return columns;
    }

    private Column column(String heading, IntFunction<Cell> cell) {
        return new Column(heading, IntStream.range(0, rows).mapToObj(cell).toList());
    }

    /** The worst of what is judged; a branch that only some vehicles of the drawing use has a mark. */
    private Cell cell(int row, String drawing) {
        List<FitCell> all = report.cells().stream().filter(each -> each.row() == row)
                .filter(each -> report.problem().columns().get(each.column()).drawing().equals(drawing)).toList();
        Optional<FitCell> worst = all.stream().filter(each -> !isUnused(each.status())).max(WORSE);
        if (worst.isEmpty()) {
            return Cell.word(all.stream().findFirst().map(unused -> unused.status() == FitStatus.CAPPED ? "capped"
                    : "other").orElse("-"));
        }
        FitStatus status = worst.get().status();
        boolean some = all.stream().anyMatch(each -> each.status() == FitStatus.CAPPED);
        seen.add(status);
        someCapped |= some;
        return new Cell(worst.get().figures().map(figures -> Millimetres.margin(figures.margin())).orElse(""),
                some ? (mark(status) + " " + SOME_CAPPED).strip() : mark(status), true, tone(status));
    }

    private static boolean isUnused(FitStatus status) {
        return status == FitStatus.CAPPED || status == FitStatus.ELSEWHERE;
    }

    private static Optional<Tone> tone(FitStatus status) {
        return status.isFailure() ? Optional.of(Tone.ERROR)
                : status == FitStatus.NOT_PROVED ? Optional.of(Tone.WARNING) : Optional.empty();
    }

    private static String mark(FitStatus status) {
        return switch (status) {
            case FITS, CAPPED, ELSEWHERE -> "";
            case NOT_PROVED -> "?";
            case TOO_LONG -> "L!";
            case DOUBLES_BACK -> "D!";
            case TOO_LONG_TO_PARK -> "P!";
            case NOT_SERVED -> "N!";
            case TOO_SHORT -> "S!";
        };
    }

    private Cell least(int row) {
        return tightest(row).map(cell -> new Cell(Millimetres.margin(cell.figures().orElseThrow().margin()), "", true,
                tone(cell.status()))).orElse(Cell.word(""));
    }

    private Optional<FitCell> tightest(int row) {
        return report.cells().stream().filter(cell -> cell.row() == row && cell.figures().isPresent())
                .min(Comparator.comparing(cell -> cell.figures().orElseThrow().margin()));
    }

    private void legend(StringBuilder out) {
        out.append('\n');
        int longest = drawings.keySet().stream().mapToInt(Cells::width).max().orElse(0);
        drawings.forEach((drawing, vehicles) -> {
            String title = Cells.printable(judged.titles().getOrDefault(drawing, ""));
            out.append(Cells.left(drawing, longest)).append("  ").append(title).append(title.isEmpty() ? "" : ", ")
                    .append(VehicleWords.of(vehicles)).append('\n');
        });
        List<String> marks = new ArrayList<>();
        seen.stream().filter(status -> !mark(status).isEmpty())
                .forEach(status -> marks.add(mark(status) + " " + status.words()));
        if (someCapped) {
            marks.add(SOME_CAPPED + " capped in some of the vehicles");
        }
        out.append("margin: what is left of the shortest branch that may be made, all tolerances against it\n");
        out.append(marks.isEmpty() ? "" : String.join(", ", marks) + "\n");
    }
}
