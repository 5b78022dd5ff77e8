// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.loomwright.app.Checked;
import org.loomwright.app.Contents;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.Tally;
import org.loomwright.app.known.Baseline;
import org.loomwright.app.revision.SinceRevision;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;

/** The outcome of a check as text. */
public final class CheckText {

    private static final int MOST_GONE = 12;

    private final Palette palette;

    public CheckText(Palette palette) {
        this.palette = palette;
    }

    /** The findings that are to be shown, in order. */
    public String findings(Opened opened, Report report, Shown shown) {
        return findings(Checked.of(opened, report), shown);
    }

    /** The findings that are to be shown, in order. */
    public String findings(Checked checked, Shown shown) {
        return findings(checked, shown, Integer.MAX_VALUE);
    }

    /** The same, with at most so many of each rule; a line each says of which rules there are more. */
    public String findings(Checked checked, Shown shown, int mostOfARule) {
        Map<String, Integer> count = new TreeMap<>();
        StringBuilder out = new StringBuilder();
        FindingText text = new FindingText(checked.texts(), checked.place().prefix(), palette);
        for (Finding finding : shown.of(checked)) {
            if (checked.isKnown(finding)) {
                text.appendKnown(finding, out);
            } else if (count.merge(finding.rule(), 1, Integer::sum) <= mostOfARule) {
                text.append(finding, out);
            }
        }
        count.values().removeIf(each -> each <= mostOfARule);
        count.forEach((rule, each) -> out.append(String.format(Locale.ROOT, "and %,d more of %s; --all shows them\n",
                each - mostOfARule, rule)));
        return out.append(count.isEmpty() ? "" : "\n").toString();
    }

    /** {@code orrin: 1 error, 2 warnings in 11 files (7 drawings, 1 harness, 1 kit)}, and a line on the practice. */
    public String summary(Opened opened, Report report) {
        return summary(Checked.of(opened, report));
    }

    /** One line: {@code orrin: 1 error, 2 warnings in 11 files (7 drawings, 1 harness, 1 kit)}. */
    public String summary(Checked checked) {
        Tone tone = checked.report().worst().map(FindingText::tone).orElse(Tone.GOOD);
        return line(Cells.printable(checked.place().name()), tone, checked.tally(), checked.contents());
    }

    /** One line for several projects: {@code 3 projects: 1 error in 31 files (...)}. */
    public String total(List<Checked> all) {
        Tally tally = all.stream().map(Checked::tally).reduce(Tally::and).orElseThrow();
        Contents contents = all.stream().map(Checked::contents).reduce(Contents::and).orElseThrow();
        Tone tone = all.stream().flatMap(each -> each.report().worst().stream()).max(Comparator.naturalOrder())
                .map(FindingText::tone).orElse(Tone.GOOD);
        return line(all.size() + (all.size() == 1 ? " project" : " projects"), tone, tally, contents);
    }

    /** What became of a baseline: which of its findings are gone, so that the file can be shortened. */
    public String baseline(Baseline.Compared compared) {
        List<Baseline.Entry> gone = compared.gone();
        if (gone.isEmpty()) {
            return "";
        }
        StringBuilder out = new StringBuilder(Cells.printable(compared.baseline().file()) + ": " + gone.size() + " of "
                + compared.baseline().entries().size() + " known findings "
                + (gone.size() == 1 ? "is" : "are") + " gone; --write-baseline shortens the file\n");
        gone.stream().limit(MOST_GONE).forEach(entry -> out.append("  gone: ").append(entry.fingerprint())
                .append(entry.words().isEmpty() ? "" : " " + Cells.printable(entry.words())).append('\n'));
        if (gone.size() > MOST_GONE) {
            out.append("  and ").append(gone.size() - MOST_GONE).append(" more\n");
        }
        return out.toString();
    }

    /** What a revision had already: {@code since v2.1: 1 is new, 12 were there, 2 are gone}. */
    public String since(SinceRevision.Since since) {
        return "since " + Cells.printable(since.revision()) + ": " + count(since.fresh(), "is new", "are new") + ", "
                + count(since.known(), "was there", "were there") + ", " + count(since.gone(), "is gone", "are gone")
                + (since.absent().isEmpty() ? "" : "; not there then: " + Cells.printable(
                        String.join(", ", since.absent()))) + "\n";
    }

    private static String count(int number, String one, String several) {
        return number + " " + (number == 1 ? one : several);
    }

    private String line(String head, Tone tone, Tally tally, Contents contents) {
        List<String> parts = new ArrayList<>();
        add(parts, contents.drawings(), "drawing", "drawings");
        add(parts, contents.harnesses(), "harness", "harnesses");
        add(parts, contents.kits(), "kit", "kits");
        String what = parts.isEmpty() ? "" : " (" + String.join(", ", parts) + ")";
        String uncounted = tally.uncounted();
        return head + ": " + palette.paint(tone, tally.words()) + " in " + contents.files()
                + (contents.files() == 1 ? " file" : " files") + what
                + (uncounted.isEmpty() ? "" : "; " + uncounted) + "\n"
                + (contents.practice().isEmpty() ? "" : Cells.printable(contents.practice()) + "\n");
    }

    private static void add(List<String> parts, int count, String one, String several) {
        if (count > 0) {
            parts.add(count + " " + (count == 1 ? one : several));
        }
    }
}
