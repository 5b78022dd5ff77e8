// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.loomwright.app.BadCall;
import org.loomwright.app.LayMatrix;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.MatrixCsv;
import org.loomwright.app.print.MatrixPage;
import org.loomwright.app.print.MatrixText;
import org.loomwright.compare.matrix.Matrix;
import org.loomwright.compare.matrix.Section;
import org.loomwright.quantity.Cancel;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code matrix}: drawings side by side. */
final class MatrixCommand implements Command {

    private static final String POSITION = "--position";
    private static final String ROWS = "--rows";
    private static final String ONLY = "--only";
    private static final String FORMAT = "--format";
    private static final String DIFFERENCES = "differences";
    private static final int WIDTH = 100;

    @Override
    public String name() {
        return "matrix";
    }

    @Override
    public String summary() {
        return "Lay drawings side by side: what each year has, and which one is different.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(Flags.one(0, true, "PROJECT", "A folder with .loom files."));
        spec.addPositional(Flags.more(1, "DRAWING",
                "Drawings or harnesses, in this order (default: all that fill one position, by year)."));
        spec.addOption(option(POSITION, "POSITION", "Only the drawings that fill this position."));
        spec.addOption(option(ROWS, "SECTION", "Only circuits, connectors, devices or places."));
        spec.addOption(option(ONLY, DIFFERENCES, "Leave out rows in which all drawings say the same."));
        spec.addOption(option(FORMAT, "FORMAT", "Print text (default), csv or html."));
        Flags.quiet(spec);
    }

    private static OptionSpec option(String name, String label, String description) {
        return OptionSpec.builder(name).type(String.class).paramLabel(label).description(description).build();
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        String format = arguments.matchedOptionValue(FORMAT, "text");
        if (!List.of("text", "csv", "html").contains(format)) {
            throw new BadCall(FORMAT + " is text, csv or html, not '" + format + "'");
        }
        Set<Section> sections = sections(arguments.matchedOptionValue(ROWS, ""));
        String only = arguments.matchedOptionValue(ONLY, "");
        if (!only.isEmpty() && !only.equals(DIFFERENCES)) {
            throw new BadCall(ONLY + " is " + DIFFERENCES + ", not '" + only + "'");
        }
        Opened opened;
        List<Matrix> all;
        try (ProgressLine progress = new ProgressLine(door, arguments.hasMatchedOption("--quiet"))) {
            opened = Desk.open(language, door, List.of(arguments.matchedPositionalValue(0, "")), progress).getFirst();
            all = matrices(opened, arguments);
        }
        switch (format) {
            case "csv" -> door.out().print(MatrixCsv.text(one(all), sections, !only.isEmpty()));
            case "html" -> door.out().print(MatrixPage.of(opened.place().name(), all, sections, !only.isEmpty()));
            default -> text(opened, all, sections, !only.isEmpty(), door);
        }
        return Exit.FINE;
    }

    private static List<Matrix> matrices(Opened opened, ParseResult arguments) throws BadCall {
        String position = arguments.matchedOptionValue(POSITION, "");
        List<String> drawings = arguments.matchedPositionalValue(1, List.of());
        if (!drawings.isEmpty() && !position.isEmpty()) {
            throw new BadCall("name drawings or a position, not both");
        }
        if (!drawings.isEmpty()) {
            return List.of(LayMatrix.named(opened.project(), drawings, Cancel.NEVER));
        }
        return position.isEmpty() ? LayMatrix.all(opened.project(), Cancel.NEVER)
                : List.of(LayMatrix.position(opened.project(), position, Cancel.NEVER));
    }

    /** A file of comma-separated values holds one table. */
    private static Matrix one(List<Matrix> all) throws BadCall {
        if (all.size() > 1) {
            throw new BadCall("csv holds one position; choose one with " + POSITION + ": "
                    + String.join(", ", all.stream().map(Matrix::name).toList()));
        }
        return all.getFirst();
    }

    private static void text(Opened opened, List<Matrix> all, Set<Section> sections, boolean onlyDifferences,
            Door door) {
        int width = door.outTerminal() ? door.width() : WIDTH;
        String gap = "";
        for (Matrix matrix : all) {
            door.out().print(gap + MatrixText.of(matrix, sections, onlyDifferences, Desk.palette(door), width));
            gap = "\n";
        }
        if (!opened.project().problems().isEmpty()) {
            door.out().print("\n" + MatrixText.HALF_READ + "\n");
        }
    }

    private static Set<Section> sections(String word) throws BadCall {
        if (word.isEmpty()) {
            return EnumSet.allOf(Section.class);
        }
        for (Section section : Section.values()) {
            if (section.words().equals(word)) {
                return EnumSet.of(section);
            }
        }
        throw new BadCall(ROWS + " is circuits, connectors, devices or places, not '" + word + "'");
    }
}
