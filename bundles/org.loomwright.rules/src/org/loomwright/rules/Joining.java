// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Span;

/** Joins drafts that are equal but for their vehicles, and turns them and problems of the text into findings. */
final class Joining {

    private record Key(String rule, Severity severity, boolean inherited, String element, String subject,
            String sentence, List<String> derivation, Finding.Label place, String advice, String key) {
    }

    private static final class Joined {
        private final Draft first;
        private final Set<Finding.Label> related;
        private Optional<Condition> condition;
        private boolean bounded;

        Joined(Draft first) {
            this.first = first;
            this.related = new LinkedHashSet<>(first.related());
            this.condition = first.condition;
            this.bounded = first.bounded;
        }

        void add(Draft draft) {
            related.addAll(draft.related());
            bounded |= draft.bounded;
            try {
                condition = condition.flatMap(mine -> draft.condition.map(mine::or));
            } catch (TooManyCombinations e) {
                bounded = true;
            }
        }
    }

    private final Map<Key, Joined> joined = new LinkedHashMap<>();
    private final Map<Condition, Finding.Affected> words = new LinkedHashMap<>();
    private final List<Finding> plain = new ArrayList<>();
    private long taken;

    void add(Draft draft) {
        taken++;
        Key key = new Key(draft.info.id(), draft.severity, draft.inherited, draft.element, draft.subject,
                draft.sentence, List.copyOf(draft.derivation), draft.place, draft.advice, draft.key);
        Joined before = joined.putIfAbsent(key, new Joined(draft));
        if (before != null) {
            before.add(draft);
        }
    }

    long taken() {
        return taken;
    }

    List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        for (Joined each : joined.values()) {
            Draft draft = each.first;
            findings.add(new Finding(draft.info.id(), draft.severity, draft.inherited, draft.element, draft.subject,
                    draft.sentence, draft.derivation, draft.info.basis(),
                    each.condition.map(condition -> affected(condition, each.bounded)), draft.place,
                    List.copyOf(each.related), draft.advice, draft.fixes, Optional.empty(),
                    Fingerprints.of(draft.info.id(), draft.element, draft.subject, draft.key)));
        }
        return findings;
    }

    private Finding.Affected affected(Condition condition, boolean bounded) {
        Finding.Affected exact = words.computeIfAbsent(condition, vehicles -> Finding.Affected.of(vehicles, false));
        return bounded ? exact.cutOff() : exact;
    }

    void problem(Problem problem, Severity severity) {
        List<Finding.Fix> fixes = problem.edits().isEmpty() ? List.of()
                : List.of(new Finding.Fix(problem.advice(), problem.edits(), problem.certain()));
        plain.add(new Finding(problem.code(), severity, false, "", "", problem.message(), List.of(), "",
                Optional.empty(), new Finding.Label(problem.span(), ""), List.of(), problem.advice(), fixes,
                Optional.empty(), Fingerprints.of(problem.code(), problem.span().file(), problem.message(), "")));
    }

    void tooMany(String what, String element, String subject, String message) {
        Finding cut = new Finding(BookRuleEngine.TOO_MANY, Severity.ERROR, false, element, subject,
                what + " was not followed to its end: " + message, List.of(), "", Optional.empty(),
                new Finding.Label(Span.NONE, ""), List.of(), "", List.of(), Optional.empty(),
                Fingerprints.of(BookRuleEngine.TOO_MANY, element, subject, what));
        if (!plain.contains(cut)) { // the parts of one network have one name
            plain.add(cut);
        }
    }

    /** What is not about vehicles. */
    List<Finding> problems() {
        return plain;
    }
}
