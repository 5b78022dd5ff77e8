// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.act;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.ide.project.Moment;
import org.loomwright.rules.Finding;

/** What can be done at a place. Stateless. */
public final class Actions {

    /** The most findings of a stretch that something is offered for; nobody looks through more. */
    public static final int MOST = 100;

    private Actions() {
    }

    /**
     * The changes that mend findings of a stretch of a file, each fix of each of the first {@value #MOST} that lie
     * there, and the acceptance of each of them.
     */
    public static List<Action> at(Moment moment, String file, int from, int to) {
        List<Action> actions = new ArrayList<>();
        List<Finding> here = moment.findings(file).stream().filter(Finding::counts)
                .filter(finding -> touches(finding.place().span(), from, to)).limit(MOST).toList();
        here.forEach(finding -> actions.addAll(fixes(moment, finding)));
        here.forEach(finding -> Acceptance.of(moment, finding).ifPresent(actions::add));
        return List.copyOf(actions);
    }

    /** The same for one finding. */
    public static List<Action> of(Moment moment, Finding finding) {
        List<Action> actions = new ArrayList<>(fixes(moment, finding));
        Acceptance.of(moment, finding).ifPresent(actions::add);
        return List.copyOf(actions);
    }

    private static List<Action> fixes(Moment moment, Finding finding) {
        return finding.fixes().stream().filter(fix -> !fix.edits().isEmpty() && isOwn(moment, fix))
                .map(fix -> new Action(title(finding, fix, moment), fix.edits(), Optional.of(finding),
                        fix.certain())).toList();
    }

    /** All fixes of a file that leave no doubt and do not touch each other, as one change; empty when there is none. */
    public static Optional<Action> all(Moment moment, String file) {
        List<TextEdit> edits = new ArrayList<>();
        int made = 0;
        for (Finding finding : moment.findings(file)) {
            List<Finding.Fix> certain = finding.fixes().stream().filter(Finding.Fix::certain).toList();
            if (finding.counts() && certain.size() == 1 && isOwn(moment, certain.getFirst())
                    && certain.getFirst().edits().stream().noneMatch(edit -> collides(edit, edits))) {
                edits.addAll(certain.getFirst().edits());
                made++;
            }
        }
        return made == 0 ? Optional.empty() : Optional.of(new Action("make the " + made
                + (made == 1 ? " change" : " changes") + " of this file that leave no doubt", edits,
                Optional.empty(), true));
    }

    private static boolean collides(TextEdit edit, List<TextEdit> others) {
        return others.stream().anyMatch(other -> other.span().file().equals(edit.span().file())
                && other.span().offset() <= edit.span().end() && edit.span().offset() <= other.span().end());
    }

    private static boolean isOwn(Moment moment, Finding.Fix fix) {
        return fix.edits().stream().allMatch(edit -> moment.project().sources().stream()
                .anyMatch(source -> source.file().equals(edit.span().file())));
    }

    private static boolean touches(Span span, int from, int to) {
        return span.offset() <= to && span.end() >= from;
    }

    /** A title that says what happens; a fix of a problem of the text often has none of its own. */
    private static String title(Finding finding, Finding.Fix fix, Moment moment) {
        if (!fix.title().isBlank() && !fix.title().endsWith("?")) {
            return fix.title();
        }
        TextEdit edit = fix.edits().getFirst();
        String text = moment.text(edit.span().file());
        String old = edit.span().end() > text.length() ? "" : text.substring(edit.span().offset(),
                edit.span().end()).strip();
        String now = edit.text().strip();
        return old.isEmpty() ? "insert \"" + now + "\"" : now.isEmpty() ? "remove \"" + old + "\""
                : "replace \"" + old + "\" by \"" + now + "\"";
    }
}
