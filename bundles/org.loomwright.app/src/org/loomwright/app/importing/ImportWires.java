// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.importing;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.harness.Problem;
import org.loomwright.lang.SourceReader;

/**
 * Makes a drawing of a wire list. Each row becomes a line as somebody would write it; what the language says of that
 * line decides whether the row is taken. Nothing is guessed: a size without a unit is refused with the reason. Linear
 * in the rows, but for the reader. Safe for use by several threads.
 */
public final class ImportWires {

    private static final String FILE = "import.loom";

    private final SourceReader reader;
    private final Set<String> colours;

    /**
     * @param reader  reads one source
     * @param colours the codes of colours that are known
     */
    public ImportWires(SourceReader reader, Set<String> colours) {
        this.reader = reader;
        this.colours = Set.copyOf(colours);
    }

    /**
     * What came of it.
     *
     * @param text    the drawing, of the rows that are taken; empty when none is
     * @param results one for each row
     */
    public record Imported(String text, List<Result> results) {

        public Imported {
            results = List.copyOf(results);
        }

        /** Number of rows that are taken. */
        public long taken() {
            return results.stream().filter(each -> each.refusal().isEmpty()).count();
        }
    }

    /**
     * What becomes of a row.
     *
     * @param row     its number in the file
     * @param line    the line that it becomes
     * @param refusal why it cannot be taken; empty when it is
     */
    public record Result(long row, String line, String refusal) {
    }

    private record Wire(WireTable.Row row, String circuit, String head, String line) {
    }

    /**
     * Makes the drawing.
     *
     * @param columns for each field its column; fields that the table does not have are left out
     * @param head    the first line without its brace: {@code drawing front "Front" of orrin fills front}
     */
    public Imported make(WireTable table, Map<Field, Integer> columns, String head) {
        Map<Long, String> refused = new HashMap<>();
        List<Wire> wires = new ArrayList<>();
        Map<String, Integer> counts = new HashMap<>();
        for (WireTable.Row row : table.rows()) {
            Wire wire = wire(row, columns, counts);
            wires.add(wire);
            missing(row, columns, refused);
            colour(row, columns, refused);
        }
        List<Wire> good = wires.stream().filter(each -> !refused.containsKey(each.row().number())).toList();
        Map<Integer, Wire> lines = new HashMap<>();
        String text = text(good, head, lines);
        for (Problem problem : reader.read(FILE, text.getBytes(StandardCharsets.UTF_8)).problems()) {
            Wire wire = lines.get(problem.span().line());
            if (wire != null) {
                refused.putIfAbsent(wire.row().number(), problem.message()
                        + (problem.advice().isEmpty() ? "" : "; " + problem.advice()));
            }
        }
        List<Wire> taken = good.stream().filter(each -> !refused.containsKey(each.row().number())).toList();
        return new Imported(taken.isEmpty() ? "" : text(taken, head, new HashMap<>()), wires.stream()
                .map(each -> new Result(each.row().number(), each.line(),
                        refused.getOrDefault(each.row().number(), ""))).toList());
    }

    private static void missing(WireTable.Row row, Map<Field, Integer> columns, Map<Long, String> refused) {
        for (Field field : Field.values()) {
            if (field.isNeeded() && cell(row, field, columns).isEmpty()) {
                refused.putIfAbsent(row.number(), columns.containsKey(field) ? "the cell for " + field.words()
                        + " is empty" : "no column is chosen for " + field.words());
            }
        }
    }

    private void colour(WireTable.Row row, Map<Field, Integer> columns, Map<Long, String> refused) {
        for (String code : cell(row, Field.COLOUR, columns).split("/")) {
            if (!code.isEmpty() && !colours.contains(code)) {
                refused.putIfAbsent(row.number(), "there is no colour named \"" + code
                        + "\"; write a code of IEC 60757, such as BK, RD or GN/RD");
            }
        }
    }

    private static Wire wire(WireTable.Row row, Map<Field, Integer> columns, Map<String, Integer> counts) {
        String circuit = cell(row, Field.CIRCUIT, columns);
        String title = cell(row, Field.TITLE, columns);
        String colour = cell(row, Field.COLOUR, columns);
        String length = cell(row, Field.LENGTH, columns);
        String given = cell(row, Field.WIRE, columns);
        int number = counts.merge(circuit, 1, Integer::sum);
        // a wire that is called like its circuit with something behind is called by that alone
        String name = given.startsWith(circuit) ? given.substring(circuit.length()) : given;
        String head = "circuit " + circuit + (title.isEmpty() ? "" : " \"" + title.replace("\\", "\\\\")
                .replace("\"", "\\\"") + "\"") + (colour.isEmpty() ? "" : " " + colour);
        return new Wire(row, circuit, head, "wire " + (name.isEmpty() ? letters(number) : name) + " "
                + cell(row, Field.SIZE, columns) + " from " + cell(row, Field.FROM, columns) + " to "
                + cell(row, Field.TO, columns) + (length.isEmpty() ? "" : " length " + length));
    }

    /** a, b, ..., z, aa, ab: the usual names of the wires of a circuit. */
    private static String letters(int number) {
        int rest = number - 1;
        String last = String.valueOf((char) ('a' + rest % 26));
        return rest < 26 ? last : letters(rest / 26) + last;
    }

    private static String cell(WireTable.Row row, Field field, Map<Field, Integer> columns) {
        return row.cell(columns.getOrDefault(field, -1)).replaceAll("\\s+", " ");
    }

    /** The text, and for each of its lines the row that it comes from; a circuit's line is that of its first row. */
    private static String text(List<Wire> wires, String head, Map<Integer, Wire> lines) {
        Map<String, List<Wire>> circuits = new LinkedHashMap<>();
        wires.forEach(each -> circuits.computeIfAbsent(each.circuit(), any -> new ArrayList<>()).add(each));
        StringBuilder text = new StringBuilder(head).append(" {\n");
        int line = 1;
        for (List<Wire> circuit : circuits.values()) {
            text.append("    ").append(circuit.getFirst().head()).append(" {\n");
            lines.put(++line, circuit.getFirst());
            for (Wire wire : circuit) {
                text.append("        ").append(wire.line()).append('\n');
                lines.put(++line, wire);
            }
            text.append("    }\n");
            line++;
        }
        return text.append("}\n").toString();
    }
}
