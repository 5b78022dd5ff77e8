// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.app.CheckProjects.Outcome;
import org.loomwright.app.Checked;
import org.loomwright.app.known.Baseline;
import org.loomwright.app.print.CheckJson;
import org.loomwright.app.print.CheckJunit;
import org.loomwright.app.print.CheckSarif;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.Palette;
import org.loomwright.app.revision.SinceRevision;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/**
 * What {@code check} prints, and what it ends with.
 *
 * @param outcomes what came of each project, in the order given
 * @param checked  those that could be checked, without what is known
 * @param flags    the options
 * @param compared what became of a baseline, if there is one
 * @param since    what a revision had already, if the call names one
 */
record CheckOutput(List<Outcome> outcomes, List<Checked> checked, Flags flags, Optional<Baseline.Compared> compared,
        Optional<SinceRevision.Since> since) {

    /** As text, unless all are asked for; the other formats have all. */
    private static final int MOST_OF_A_RULE = 50;

    /** The highest of the codes of all projects. */
    int exitCode() {
        return checked.size() < outcomes.size() ? Exit.BAD_CALL : objects() ? Exit.FINDINGS : Exit.FINE;
    }

    private boolean objects() {
        return !flags.never() && checked.stream().anyMatch(each -> each.report().objects(flags.failOn()));
    }

    /** Prints it; a line on standard error for each project that could not be checked. */
    void print(Door door) {
        switch (flags.format()) {
            case JSON -> door.out().print(
                    CheckJson.of(checked, flags.threshold(), objects(), flags.shown(), compared, since));
            case SARIF -> door.out().print(sarif());
            case JUNIT -> door.out().print(junit());
            case TEXT -> text(door);
        }
        refused().values().forEach(refusal -> Main.complain(refusal, door));
    }

    /** Why projects could not be checked, by name. */
    private Map<String, String> refused() {
        Map<String, String> refused = new LinkedHashMap<>();
        outcomes.stream().filter(outcome -> outcome.checked().isEmpty())
                .forEach(outcome -> refused.put(outcome.place().name(), outcome.refusal()));
        return refused;
    }

    private static List<RuleInfo> rules() {
        return StandardRules.book().infos();
    }

    private String sarif() {
        CheckText text = new CheckText(Palette.PLAIN);
        List<String> remarks = Stream.concat(since.stream().flatMap(each -> text.since(each).lines()),
                compared.stream().flatMap(each -> text.baseline(each).lines())).toList();
        return CheckSarif.of(checked, flags.shown(), rules(),
                new CheckSarif.Call(Version.text(), exitCode(), List.copyOf(refused().values()), remarks));
    }

    /** With {@code never} cases fail as usual: it is the exit code that somebody wants nothing of. */
    private String junit() {
        return new CheckJunit(flags.shown(), rules(), flags.never() ? Severity.WARNING : flags.failOn(),
                flags.settings().today()).of(checked, refused());
    }

    private void text(Door door) {
        CheckText text = new CheckText(Desk.palette(door));
        for (Checked each : checked) {
            door.out().print(text.findings(each, flags.shown(),
                    flags.shown().known() ? Integer.MAX_VALUE : MOST_OF_A_RULE));
        }
        if (!flags.quiet()) {
            checked.forEach(each -> door.out().print(text.summary(each)));
            if (checked.size() > 1) {
                door.out().print(text.total(checked));
            }
            since.ifPresent(each -> door.out().print(text.since(each)));
            compared.ifPresent(each -> door.out().print(text.baseline(each)));
        }
    }
}
