// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.app.Texts;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.harness.Span;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Severity;
import org.loomwright.stock.Stock;

/**
 * Findings for people: what is wrong, the source line with the place marked, what else belongs to it, how the figures
 * came about, which vehicles feel it, and what to try. Not safe for use by several threads.
 */
public final class FindingText {

    private static final int MOST_SNIPPETS = 4;
    private static final int MOST_FOLDED = 12;

    private final Texts texts;
    private final String prefix;
    private final Palette palette;

    /**
     * @param texts   the files that findings point into
     * @param prefix  what is put before their names, so that a terminal can open them
     * @param palette how words are set off
     */
    public FindingText(Texts texts, String prefix, Palette palette) {
        this.texts = texts;
        this.prefix = prefix;
        this.palette = palette;
    }

    /** Appends one finding and an empty line. */
    public void append(Finding finding, StringBuilder out) {
        append(finding, standing(finding), out);
    }

    /** Appends a finding that was there before. */
    void appendKnown(Finding finding, StringBuilder out) {
        append(finding, " (known)", out);
    }

    private void append(Finding finding, String standing, StringBuilder out) {
        Tone tone = tone(finding.severity());
        out.append(palette.paint(tone, finding.severity().words() + "[" + finding.rule() + "]"));
        out.append(standing).append(palette.paint(Tone.HEAD, ": " + clean(finding.sentence()))).append('\n');
        int margin = margin(finding);
        String subject = finding.subject().isEmpty() ? "" : " (" + clean(finding.subject()) + ")";
        snippet(finding.place(), "-->", subject, tone, margin, out);
        List<Finding.Label> related = finding.related();
        int shown = related.size() <= MOST_SNIPPETS ? related.size() : MOST_SNIPPETS - 1;
        for (Finding.Label label : related.subList(0, shown)) {
            snippet(label, ":::", "", Tone.MARGIN, margin, out);
        }
        folded(related.subList(shown, related.size()), margin, out);
        for (String[] remark : remarks(finding)) {
            out.append(" ".repeat(margin)).append(palette.paint(Tone.MARGIN, " = "));
            out.append(palette.paint(Tone.HEAD, remark[0])).append(clean(remark[1])).append('\n');
        }
        out.append('\n');
    }

    /** What also belongs to a finding, a few words each, so that the message stays within a screen. */
    private void folded(List<Finding.Label> labels, int margin, StringBuilder out) {
        if (labels.isEmpty()) {
            return;
        }
        List<String> words = labels.stream().limit(MOST_FOLDED).map(label -> named(label.span().file()) + ":"
                + label.span().line() + (label.text().isEmpty() ? "" : " (" + label.text() + ")")).toList();
        int more = labels.size() - words.size();
        out.append(" ".repeat(margin)).append(palette.paint(Tone.MARGIN, ":::")).append(" also ")
                .append(clean(String.join(", ", words))).append(more > 0 ? " and " + more + " more" : "").append('\n');
        out.append(" ".repeat(margin)).append(palette.paint(Tone.MARGIN, " |")).append('\n');
    }

    /** The tone of a severity. */
    static Tone tone(Severity severity) {
        return switch (severity) {
            case ERROR -> Tone.ERROR;
            case WARNING -> Tone.WARNING;
            case NOTE -> Tone.NOTE;
        };
    }

    private static String standing(Finding finding) {
        if (finding.inherited()) {
            return " (inherited)";
        }
        return finding.acceptance().map(acceptance -> " (" + acceptance.how().words() + ")").orElse("");
    }

    private static int margin(Finding finding) {
        int last = finding.place().span().line();
        for (Finding.Label label : finding.related()) {
            last = Math.max(last, label.span().line());
        }
        return Math.max(2, Integer.toString(last).length());
    }

    private void snippet(Finding.Label label, String arrow, String subject, Tone tone, int margin,
            StringBuilder out) {
        Span span = label.span();
        String indent = " ".repeat(margin);
        if (span.file().isEmpty()) {
            out.append(subject.isEmpty() ? "" : indent + palette.paint(Tone.MARGIN, arrow) + subject + "\n");
            return;
        }
        String bar = palette.paint(Tone.MARGIN, "|");
        out.append(indent).append(palette.paint(Tone.MARGIN, arrow)).append(' ').append(clean(at(span)))
                .append(subject).append('\n');
        String text = texts.of(span.file());
        if (text.isEmpty()) {
            return;
        }
        Excerpt excerpt = Excerpt.of(text, span);
        out.append(indent).append(' ').append(bar).append('\n');
        out.append(palette.paint(Tone.MARGIN, Cells.right(Integer.toString(excerpt.line()), margin))).append(' ')
                .append(bar).append(' ').append(excerpt.text()).append('\n');
        int lead = excerpt.marks().indexOf('^');
        out.append(indent).append(' ').append(bar).append(' ').append(" ".repeat(lead));
        out.append(palette.paint(tone, excerpt.marks().substring(lead)
                + (label.text().isEmpty() ? "" : " " + clean(label.text())))).append('\n');
        out.append(indent).append(' ').append(bar).append('\n');
    }

    private List<String[]> remarks(Finding finding) {
        List<String[]> remarks = new ArrayList<>();
        for (int i = 0; i < finding.derivation().size(); i++) {
            remarks.add(new String[] {i == 0 ? "derivation: " : "            ", finding.derivation().get(i)});
        }
        if (!finding.basis().isEmpty()) {
            remarks.add(new String[] {"basis: ", finding.basis()});
        }
        finding.affected().ifPresent(affected -> remarks.add(new String[] {"vehicles: ", vehicles(affected)}));
        finding.acceptance().ifPresent(acceptance -> remarks.add(new String[] {"accepted: ",
            acceptance.reason() + " (" + at(acceptance.place()) + ")"}));
        if (!finding.advice().isEmpty()) {
            remarks.add(new String[] {"try: ", finding.advice()});
        }
        return remarks;
    }

    /** {@code year >= 1967 and fan, 312 of 4,608 vehicles}. */
    static String vehicles(Finding.Affected affected) {
        String all = affected.every() ? affected.tally() : affected.words() + ", " + affected.tally();
        return affected.bounded() ? all + "; the search for more was cut off (bounded)" : all;
    }

    private String at(Span span) {
        return named(span.file()) + ":" + span.line() + ":" + span.column();
    }

    /** The name of a file as a terminal opens it; the stock has no file that could be opened. */
    private String named(String file) {
        return file.startsWith(Stock.PREFIX) ? file : prefix + file;
    }

    private static String clean(String words) {
        return Cells.printable(words);
    }
}
