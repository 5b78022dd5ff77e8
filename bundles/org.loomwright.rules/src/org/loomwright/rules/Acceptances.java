// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Resolution;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.Waiver;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Spelling;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;

/**
 * Marks the findings that a person accepted. An acceptance for some vehicles parts a finding in two: the accepted part
 * and the rest, which goes on under the fingerprint of the whole. A waiver that accepts nothing, or no longer, is a
 * finding of its own.
 */
final class Acceptances {

    static final RuleInfo UNUSED = new RuleInfo("waiver-unused", "Does each waiver accept something?", Severity.WARNING,
            Kind.TRANSCRIPTION, Scope.PROJECT, "the meaning of the language");
    static final RuleInfo EXPIRED = new RuleInfo("waiver-expired", "Has the last day of a waiver passed?",
            Severity.WARNING, Kind.TRANSCRIPTION, Scope.PROJECT, "the meaning of the language");
    static final List<RuleInfo> RULES = List.of(UNUSED, EXPIRED);

    private record AsFactory(Fact<String> reason, Condition when) {
    }

    private final Project project;
    private final RuleBook book;
    private final Settings settings;
    private final Map<String, List<AsFactory>> asFactory = new HashMap<>();
    private final Map<String, Set<String>> elements = new HashMap<>();

    Acceptances(Project project, RuleBook book, Settings settings) {
        this.project = project;
        this.book = book;
        this.settings = settings;
        project.wirings().values().forEach(this::collect);
    }

    private void collect(WiringView view) {
        for (WiringView.CircuitView circuit : view.circuits()) {
            circuit.circuit().asFactory().ifPresent(
                    reason -> collect(view, circuit.circuit().name().text(), reason, circuit.when()));
        }
        for (WireView wire : view.wires()) {
            for (Optional<Fact<String>> each : List.of(wire.wire().asFactory(), circuit(wire.circuit()))) {
                each.ifPresent(reason -> collect(view, wire.label(), reason, wire.when()));
            }
        }
    }

    private static Optional<Fact<String>> circuit(Circuit circuit) {
        return circuit.asFactory();
    }

    private void collect(WiringView view, String element, Fact<String> reason, Condition within) {
        try {
            Resolution resolution = view.platform().vehicles().resolve(reason.when());
            if (resolution.isGood()) {
                asFactory.computeIfAbsent(view.name() + ":" + element, key -> new ArrayList<>())
                        .add(new AsFactory(reason, resolution.condition().and(within)));
            }
        } catch (TooManyCombinations e) {
            // what cannot be followed accepts nothing
        }
    }

    /** The findings with those parts marked that were accepted, and findings about waivers that accept nothing. */
    List<Finding> apply(List<Finding> findings) {
        findings.forEach(each -> elements.computeIfAbsent(each.rule(), key -> new TreeSet<>()).add(each.element()));
        List<Finding> open = new ArrayList<>(findings);
        List<Finding> done = new ArrayList<>();
        Set<Waiver> used = new HashSet<>();
        for (Waiver waiver : project.waivers()) {
            if (expired(waiver) || waiver.reason().isBlank()) {
                continue;
            }
            List<Finding> rest = new ArrayList<>();
            for (Finding finding : open) {
                if (!waiver.rule().text().equals(finding.rule()) || !named(waiver).equals(finding.element())) {
                    rest.add(finding);
                } else if (accept(finding, when(waiver, finding), acceptance(waiver), rest, done)) {
                    used.add(waiver);
                }
            }
            open = rest;
        }
        List<Finding> rest = new ArrayList<>();
        open.forEach(finding -> keepAsFactory(finding, rest, done));
        done.addAll(rest);
        project.waivers().stream().filter(waiver -> !book.aside().contains(waiver.rule().text()))
                .filter(waiver -> expired(waiver) || !used.contains(waiver) && !isFaulty(waiver))
                .forEach(waiver -> done.add(about(waiver)));
        return done;
    }

    private void keepAsFactory(Finding finding, List<Finding> rest, List<Finding> done) {
        boolean engineering = book.info(finding.rule()).filter(info -> info.kind() == Kind.ENGINEERING).isPresent();
        List<Finding> open = List.of(finding);
        for (AsFactory each : engineering ? asFactory.getOrDefault(finding.element(), List.of())
                : List.<AsFactory>of()) {
            List<Finding> left = new ArrayList<>();
            Finding.Acceptance acceptance = new Finding.Acceptance(Finding.Acceptance.How.AS_FACTORY,
                    each.reason().value(), each.reason().span());
            open.forEach(part -> accept(part, Optional.of(each.when()), acceptance, left, done));
            open = left;
        }
        rest.addAll(open);
    }

    /** Parts a finding; returns whether some of it was accepted. Nothing is where the parts cannot be followed. */
    private static boolean accept(Finding finding, Optional<Condition> when, Finding.Acceptance acceptance,
            List<Finding> rest, List<Finding> done) {
        try {
            return part(finding, when, acceptance, rest, done);
        } catch (TooManyCombinations e) {
            rest.add(finding);
            return false;
        }
    }

    private static boolean part(Finding finding, Optional<Condition> when, Finding.Acceptance acceptance,
            List<Finding> rest, List<Finding> done) {
        if (when.isEmpty()) {
            rest.add(finding);
            return false;
        }
        if (finding.affected().isEmpty()) {
            done.add(with(finding, finding.affected(), Optional.of(acceptance)));
            return true;
        }
        Finding.Affected affected = finding.affected().get();
        Condition vehicles = affected.condition().orElseThrow();
        Condition both = vehicles.and(when.get());
        Condition left = vehicles.minus(when.get());
        if (both.isNever()) {
            rest.add(finding);
            return false;
        }
        Finding accepted = with(finding, part(affected, both), Optional.of(acceptance));
        if (!left.isNever()) {
            rest.add(with(finding, part(affected, left), Optional.empty()));
            accepted = Fingerprints.renamed(accepted, "accepted", acceptance.reason());
        }
        done.add(accepted);
        return true;
    }

    private static Optional<Finding.Affected> part(Finding.Affected whole, Condition part) {
        return Optional.of(part.equals(whole.condition().orElseThrow()) ? whole
                : Finding.Affected.of(part, whole.bounded()));
    }

    static Finding with(Finding finding, Optional<Finding.Affected> affected,
            Optional<Finding.Acceptance> acceptance) {
        return new Finding(finding.rule(), finding.severity(), finding.inherited(), finding.element(),
                finding.subject(), finding.sentence(), finding.derivation(), finding.basis(), affected,
                finding.place(), finding.related(), finding.advice(), finding.fixes(), acceptance,
                finding.fingerprint());
    }

    private static String named(Waiver waiver) {
        return waiver.element().isEmpty() ? waiver.target().text() : waiver.target().text() + ":" + waiver.element();
    }

    private static Finding.Acceptance acceptance(Waiver waiver) {
        return new Finding.Acceptance(Finding.Acceptance.How.WAIVED, waiver.reason(), waiver.span());
    }

    /** The vehicles of a waiver, as far as its condition can be read without a mistake: a slip never accepts more. */
    private static Optional<Condition> when(Waiver waiver, Finding finding) {
        if (finding.affected().isEmpty()) {
            return Optional.empty();
        }
        try {
            Resolution resolution = finding.affected().get().condition().orElseThrow()
                    .vehicles().resolve(waiver.when());
            return resolution.isGood() ? Optional.of(resolution.condition()) : Optional.empty();
        } catch (TooManyCombinations e) {
            return Optional.empty();
        }
    }

    /** A waiver whose reason could not be read; the problem of its line says so. */
    private boolean isFaulty(Waiver waiver) {
        return waiver.reason().isBlank() && project.problems().stream()
                .anyMatch(problem -> problem.span().file().equals(waiver.span().file())
                        && problem.span().line() == waiver.span().line());
    }

    private boolean expired(Waiver waiver) {
        Optional<LocalDate> today = settings.today();
        return today.isPresent() && waiver.until().filter(last -> today.get().isAfter(last)).isPresent();
    }

    private List<Finding.Fix> rightName(Waiver waiver) {
        List<String> known = book.infos().stream().map(RuleInfo::id).toList();
        return Spelling.nearest(waiver.rule().text(), known).map(name -> List.of(new Finding.Fix("write \"" + name
                + "\"", List.of(new TextEdit(waiver.rule().span(), name))))).orElse(List.of());
    }

    /** The element that a waiver most likely means: one that its rule speaks of, under nearly the same name. */
    private Optional<String> meant(Waiver waiver) {
        Set<String> spoken = elements.getOrDefault(waiver.rule().text(), Set.of());
        return spoken.contains(named(waiver)) ? Optional.empty() : Spelling.nearest(named(waiver), spoken);
    }

    /** Offers the name of that element, where the waiver's stands in the text as it is read. */
    private List<Finding.Fix> rightElement(Waiver waiver, String meant) {
        Span start = waiver.target().span();
        String wrong = named(waiver);
        if (!project.text(start.file()).orElse("").startsWith(wrong, start.offset())) {
            return List.of();
        }
        Span span = new Span(start.file(), start.offset(), wrong.length(), start.line(), start.column());
        return List.of(new Finding.Fix("write \"" + meant + "\"", List.of(new TextEdit(span, meant)),
                Spelling.isSlip(wrong, meant)));
    }

    /**
     * Takes the line out. Nothing is offered while the text has problems, since what the waiver accepts may stand in
     * what could not be read; nor where a comment shares its line.
     */
    private List<Finding.Fix> removal(Waiver waiver) {
        Span span = waiver.span();
        String text = project.text(span.file()).orElse("");
        int start = text.lastIndexOf('\n', Math.max(0, span.offset() - 1)) + 1;
        int end = text.indexOf('\n', span.end());
        end = end < 0 ? text.length() : end + 1;
        boolean alone = span.length() > 0 && span.end() <= end && start <= span.offset()
                && text.substring(start, span.offset()).isBlank() && text.substring(span.end(), end).isBlank();
        if (!alone || !project.problems().isEmpty()) {
            return List.of();
        }
        Span line = new Span(span.file(), start, end - start, span.line(), 1);
        return List.of(new Finding.Fix("remove the line", List.of(new TextEdit(line, ""))));
    }

    private Finding about(Waiver waiver) {
        RuleInfo info = expired(waiver) ? EXPIRED : UNUSED;
        boolean known = book.info(waiver.rule().text()).isPresent();
        String sentence = expired(waiver)
                ? "the waiver of " + waiver.rule() + " on " + named(waiver) + " held until "
                        + waiver.until().orElseThrow()
                : "the waiver of " + waiver.rule() + " on " + named(waiver) + " accepts nothing"
                        + (!known ? ": there is no such rule"
                                : waiver.reason().isBlank() ? ": it gives no reason" : "");
        Optional<String> meant = meant(waiver);
        String advice = expired(waiver) ? "mend what it accepted, or judge it anew and give another day"
                : waiver.reason().isBlank() ? "say why: because \"...\""
                : meant.isPresent() ? "did you mean \"" + meant.get() + "\"?"
                : known ? "remove it, or check the element and the vehicles that it names"
                : "check the name of the rule";
        Finding.Label place = new Finding.Label(known || expired(waiver) ? waiver.span() : waiver.rule().span(), "");
        List<Finding.Fix> fixes = expired(waiver) || waiver.reason().isBlank() ? List.of() : !known ? rightName(waiver)
                : meant.map(element -> rightElement(waiver, element)).orElseGet(() -> removal(waiver));
        return new Finding(info.id(), info.severity(), false, named(waiver), "waiver on " + named(waiver), sentence,
                List.of(), info.basis(), Optional.empty(), place, List.of(), advice, fixes, Optional.empty(),
                Fingerprints.of(info.id(), named(waiver), waiver.rule().text(), waiver.name().text()));
    }
}
