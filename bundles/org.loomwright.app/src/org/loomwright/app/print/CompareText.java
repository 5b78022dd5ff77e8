// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.app.CompareRevisions.Compared;
import org.loomwright.app.JudgeSold.Judged;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.Sort;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Felt;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Span;

/** A comparison for people: the verdict in the first line, then the changes by class, then what follows from them. */
public final class CompareText {

    private static final int MOST_CHANGES = 25;
    private static final int MOST_LINES = 8;
    private static final int MOST_UNREAD = 4;

    private final Palette palette;
    private final int width;
    private final boolean all;

    /**
     * @param palette how words are set off
     * @param width   columns that a line should not pass
     * @param all     true to print every change and every line of what follows, not only the first ones
     */
    public CompareText(Palette palette, int width, boolean all) {
        this.palette = palette;
        this.width = width;
        this.all = all;
    }

    /** The whole text. */
    public String of(Compared compared) {
        StringBuilder out = new StringBuilder();
        out.append(verdict(compared));
        unread(compared.old(), out);
        unread(compared.now(), out);
        for (Aspect aspect : Aspect.values()) {
            List<Change> changes = compared.comparison().changes().stream()
                    .filter(change -> change.aspect() == aspect).toList();
            if (!changes.isEmpty()) {
                head(aspect.words() + " (" + aspect.attention().words() + ")", out);
                int shown = all || changes.size() <= MOST_CHANGES ? changes.size() : MOST_CHANGES - 1;
                changes.subList(0, shown).forEach(change -> change(change, compared, out));
                more(changes.size() - shown, "  ", out);
            }
        }
        compared.effects().forEach(effect -> effect(effect, out));
        return out.toString();
    }

    /** One line: how much changed, and the worst of what follows. */
    public String verdict(Compared compared) {
        List<Change> changes = compared.comparison().changes();
        int felt = compared.comparison().felt().size();
        int text = changes.size() - felt;
        List<String> words = new ArrayList<>();
        if (felt > 0) {
            words.add(felt + (felt == 1 ? " change that vehicles feel" : " changes that vehicles feel"));
        } else {
            words.add(text == 0 ? "no change" : "no change that vehicles feel");
        }
        if (text > 0) {
            words.add(text + (text == 1 ? " place reads otherwise" : " places read otherwise"));
        }
        String counts = String.join(", ", words);
        List<String> headlines = compared.effects().stream().flatMap(effect -> effect.headline().stream()).toList();
        boolean worse = !headlines.isEmpty();
        return Cells.printable(subject(compared)) + ": " + palette.paint(worse ? Tone.WARNING : Tone.GOOD, counts)
                + (worse ? "; " + Cells.printable(String.join("; ", headlines)) : "") + "\n";
    }

    /** The one harness, drawing, kit or platform that everything is about, else the project. */
    private static String subject(Compared compared) {
        Set<String> homes = new TreeSet<>();
        compared.comparison().changes().forEach(change -> homes.add(change.item().sort() == Sort.PART
                ? compared.now().place().name() : FactSheet.home(change.item())));
        return homes.size() == 1 ? homes.iterator().next() : compared.now().place().name();
    }

    /** What could not be read of a side, so that nobody takes silence for sameness. */
    private void unread(Opened side, StringBuilder out) {
        List<Problem> problems = side.project().sources().stream().flatMap(each -> each.problems().stream()).toList();
        if (!problems.isEmpty()) {
            head("not understood, and left out of this", out);
            int shown = all || problems.size() <= MOST_UNREAD ? problems.size() : MOST_UNREAD - 1;
            problems.subList(0, shown).forEach(problem ->
                    wrapped(at(side.place().prefix(), problem.span()) + ": " + problem.message(), out));
            more(problems.size() - shown, "  ", out);
        }
    }

    /**
     * A project held against one of its sold revisions: one line when it still does all that the sold one does, else
     * that line and what it does no more.
     */
    public String sold(Judged judged) {
        boolean fine = judged.compared().effects().isEmpty();
        StringBuilder out = new StringBuilder(Cells.printable(judged.kit().name().text() + " revision "
                + judged.sold().revision() + " (" + judged.sold().at() + "): "));
        out.append(palette.paint(fine ? Tone.GOOD : Tone.WARNING, fine ? "still fits and mates all that it did"
                : "is sold and no longer compatible")).append('\n');
        unread(judged.compared().old(), out);
        judged.compared().effects().forEach(effect -> effect(effect, out));
        return out.toString();
    }

    private void head(String words, StringBuilder out) {
        out.append('\n').append(palette.paint(Tone.HEAD, words)).append('\n');
    }

    private void change(Change change, Compared compared, StringBuilder out) {
        wrapped(change.sentence(), out);
        String at = change.after().map(span -> at(compared.now().place().prefix(), span))
                .or(() -> change.before().map(span -> "was at " + at(compared.old().place().prefix(), span)))
                .orElse("");
        String vehicles = change.felt() == Felt.NONE ? "" : words(change.felt()) + "; ";
        wrapped("    " + vehicles + at, out);
    }

    private static String at(String prefix, Span span) {
        return prefix + span.file() + ":" + span.line();
    }

    private static String words(Felt felt) {
        String tally = felt.tally().isEmpty() || felt.words().equals("every vehicle") ? "" : " (" + felt.tally() + ")";
        return felt.words() + tally + (felt.caveat().isEmpty() ? "" : ", " + felt.caveat());
    }

    private void effect(Effect effect, StringBuilder out) {
        head(effect.title(), out);
        int shown = all || effect.lines().size() <= MOST_LINES ? effect.lines().size() : MOST_LINES - 1;
        effect.lines().subList(0, shown).forEach(line -> line(line, out));
        more(effect.lines().size() - shown, "          ", out);
    }

    private static void more(int left, String indent, StringBuilder out) {
        if (left > 0) {
            out.append(indent).append("and ").append(left).append(" more (--all)\n");
        }
    }

    private void line(Effect.Line line, StringBuilder out) {
        String change = line.before().isEmpty() || line.after().isEmpty() ? line.before() + line.after()
                : line.before() + " -> " + line.after();
        String words = line.subject() + ": " + (line.what() + " " + change).strip()
                + (line.vehicles().isEmpty() ? "" : "; " + line.vehicles());
        Tone tone = switch (line.direction()) {
            case WORSE -> Tone.WARNING;
            case OTHER -> Tone.FAINT;
            case BETTER -> Tone.GOOD;
        };
        String mark = Cells.left(line.direction() == Effect.Direction.OTHER ? "" : line.direction().words(), 6);
        out.append("  ").append(palette.paint(tone, mark)).append("  ");
        List<String> lines = lines(Cells.printable(words), width - 10);
        out.append(lines.getFirst()).append('\n');
        lines.subList(1, lines.size()).forEach(each -> out.append("            ").append(each).append('\n'));
    }

    private void wrapped(String text, StringBuilder out) {
        String indent = text.startsWith("    ") ? "      " : "  ";
        List<String> lines = lines(Cells.printable(text.strip()), width - indent.length());
        out.append(indent).append(lines.getFirst()).append('\n');
        lines.subList(1, lines.size()).forEach(each -> out.append(indent).append("    ").append(each).append('\n'));
    }

    /** The text in lines of at most that many columns where it can be broken at spaces; later lines are shorter. */
    private static List<String> lines(String text, int columns) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            Optional<String> full = line.isEmpty() || Cells.width(line.toString()) + 1 + Cells.width(word)
                    <= columns - (lines.isEmpty() ? 0 : 4) ? Optional.empty() : Optional.of(line.toString());
            if (full.isPresent()) {
                lines.add(full.get());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
