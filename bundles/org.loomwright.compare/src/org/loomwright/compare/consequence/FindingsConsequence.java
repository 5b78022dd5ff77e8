// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.loomwright.compare.change.Labels;
import org.loomwright.compare.consequence.Effect.Direction;
import org.loomwright.compare.consequence.Effect.Line;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;

/**
 * Which findings a revision gains and loses. Only findings that count are held against each other. Two are the same
 * when they have one fingerprint, or one rule and elements that are partners; one that holds for more vehicles than
 * before, or weighs more, is gained for these.
 */
public final class FindingsConsequence implements Consequence {

    private static final Comparator<Line> ORDER = Comparator.comparing(Line::direction)
            .thenComparing(line -> line.weight().map(Severity::ordinal).map(each -> -each).orElse(0));

    private final RuleEngine engine;
    private final Settings settings;

    /**
     * @param engine   checks each side
     * @param settings the day on which waivers are judged, the same for both sides
     */
    public FindingsConsequence(RuleEngine engine, Settings settings) {
        this.engine = engine;
        this.settings = settings;
    }

    /** A finding on both sides. */
    private record Same(Finding before, Finding after) {
    }

    @Override
    public Effect of(Revision revision, Cancel cancel, Progress progress) {
        Report before = engine.check(revision.old(), settings, cancel, progress);
        Report after = engine.check(revision.now(), settings, cancel, progress);
        Map<String, String> names = names(revision);
        List<Same> same = new ArrayList<>();
        List<Finding> lost = new ArrayList<>(before.counting());
        List<Finding> gained = new ArrayList<>(after.counting());
        pair(lost, gained, same, Finding::fingerprint, Finding::fingerprint);
        pair(lost, gained, same, finding -> key(finding, names.getOrDefault(finding.element(), finding.element())),
                finding -> key(finding, finding.element()));
        List<Line> lines = new ArrayList<>();
        gained.forEach(finding -> lines.add(line(finding, Direction.WORSE, Optional.of(finding.severity()))));
        same.forEach(each -> grown(each).ifPresent(lines::add));
        lost.forEach(finding -> lines.add(line(finding, Direction.BETTER, Optional.empty())));
        String title = "findings: " + gained.size() + " gained, " + lost.size() + " lost, " + same.size()
                + " on both sides";
        return new Effect("findings", title, lines.stream().sorted(ORDER).toList(), headline(lines));
    }

    private static String key(Finding finding, String element) {
        return finding.rule() + "\u0001" + element;
    }

    /** The names of renamed elements as findings have them: {@code front:12b}. */
    private static Map<String, String> names(Revision revision) {
        Map<String, String> names = new HashMap<>();
        revision.comparison().matching().partners().forEach((old, now) -> {
            if (!old.equals(now)) {
                names.put(FactSheet.home(old) + ":" + Labels.name(old), FactSheet.home(now) + ":" + Labels.name(now));
            }
        });
        return names;
    }

    /** Takes what has the same key out of both lists, in order. */
    private static void pair(List<Finding> lost, List<Finding> gained, List<Same> same,
            Function<Finding, String> oldKey, Function<Finding, String> newKey) {
        Map<String, List<Finding>> waiting = new LinkedHashMap<>();
        gained.forEach(each -> waiting.computeIfAbsent(newKey.apply(each), any -> new ArrayList<>()).add(each));
        List<Same> found = new ArrayList<>();
        for (Finding each : lost) {
            List<Finding> partners = waiting.getOrDefault(oldKey.apply(each), List.of());
            if (!partners.isEmpty()) {
                found.add(new Same(each, partners.removeFirst()));
            }
        }
        Set<Finding> taken = Collections.newSetFromMap(new IdentityHashMap<>());
        found.forEach(each -> taken.addAll(List.of(each.before(), each.after())));
        lost.removeIf(taken::contains);
        gained.removeIf(taken::contains);
        same.addAll(found);
    }

    private static Line line(Finding finding, Direction direction, Optional<Severity> weight) {
        String subject = finding.subject().isEmpty() ? finding.element() : finding.subject();
        return new Line(direction, subject.isEmpty() ? finding.place().span().file() : subject,
                finding.severity().words() + "[" + finding.rule() + "] " + finding.sentence(), "", "",
                finding.affected().map(Finding.Affected::words).orElse(""), weight);
    }

    /** A finding that is on both sides and weighs more or less, or holds for more or fewer vehicles. */
    private static Optional<Line> grown(Same same) {
        int weight = same.after().severity().compareTo(same.before().severity());
        int vehicles = count(same.after()).compareTo(count(same.before()));
        if (weight == 0 && vehicles == 0) {
            return Optional.empty();
        }
        boolean worse = weight > 0 || weight == 0 && vehicles > 0;
        Line line = line(same.after(), worse ? Direction.WORSE : Direction.BETTER,
                worse ? Optional.of(same.after().severity()) : Optional.empty());
        String then = same.before().affected().map(Finding.Affected::words).orElse("");
        return Optional.of(new Line(line.direction(), line.subject(),
                line.what() + (weight == 0 ? ", for" : ", was a " + same.before().severity().words() + ", for"),
                then, line.vehicles(), "", line.weight()));
    }

    private static BigInteger count(Finding finding) {
        return finding.affected().flatMap(Finding.Affected::count).orElse(BigInteger.ZERO);
    }

    private static Optional<String> headline(List<Line> lines) {
        List<String> words = new ArrayList<>();
        for (Severity severity : List.of(Severity.ERROR, Severity.WARNING)) {
            long count = lines.stream().filter(line -> line.weight().filter(severity::equals).isPresent()).count();
            if (count > 0) {
                words.add(count + " " + severity.words() + (count == 1 ? "" : "s"));
            }
        }
        return words.isEmpty() ? Optional.empty() : Optional.of(String.join(" and ", words) + " gained");
    }
}
