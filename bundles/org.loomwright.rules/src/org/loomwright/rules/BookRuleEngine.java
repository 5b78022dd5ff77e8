// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Problem;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * Runs the rules of a book over every target of a project, joins findings that are equal but for their vehicles, marks
 * those that a person accepted, and sorts what is left.
 *
 * <p>Each rule runs once for each target of its sort, by several threads if wanted; what they find is joined in the
 * order of targets and rules, so that the report does not depend on the threads. Stateless; safe for use by several
 * threads. A rule whose conditions cannot be followed to the end leaves a finding {@value #TOO_MANY} and does not stop
 * the others. What geometry has to say about the shape of a drawing or harness is reported with the problems of the
 * text.
 */
public final class BookRuleEngine implements RuleEngine {

    /** The code of the finding that says that conditions could not be followed exactly. */
    public static final String TOO_MANY = "too-many-combinations";

    private final RuleBook book;
    private final int threads;

    /** Takes the rules to run, by one thread. */
    public BookRuleEngine(RuleBook book) {
        this(book, 1);
    }

    /**
     * Takes the rules to run.
     *
     * @param threads the most threads to use, at least 1; the report does not depend on it
     */
    public BookRuleEngine(RuleBook book, int threads) {
        if (threads < 1) {
            throw new IllegalArgumentException("no thread to check with");
        }
        this.book = book;
        this.threads = threads;
        Fingerprints.prepare(); // while sources are still read
    }

    /**
     * A report and what a later check can use again.
     *
     * @param report the report; the same as without memory
     * @param memory of this check
     * @param asked  calls of rules that were made; the others are remembered
     */
    public record Checked(Report report, Memory memory, long asked) {
    }

    @Override
    public Report check(Project project, Settings settings, Cancel cancel, Progress progress) {
        return check(project, settings, Memory.none(), cancel, progress).report();
    }

    @Override
    public Answered check(Project project, Settings settings, Function<String, Silences> known, Cancel cancel,
            Progress progress) {
        Prints prints = new Prints(project, settings);
        Hearing hearing = new Hearing(prints, known.apply(prints.common()));
        Report report = check(project, settings, Memory.none(), Optional.of(hearing), cancel, progress).report();
        return new Answered(report, prints.common(), hearing.silences());
    }

    /**
     * Checks a project, asking rules only about what is not the same as in an earlier check.
     *
     * @throws org.loomwright.quantity.Cancelled if it was cancelled; the memory is as good as before
     */
    public Checked check(Project project, Settings settings, Memory memory, Cancel cancel, Progress progress) {
        return check(project, settings, memory, Optional.empty(), cancel, progress);
    }

    private Checked check(Project project, Settings settings, Memory memory, Optional<Hearing> hearing, Cancel cancel,
            Progress progress) {
        List<String> names = Memory.names(project);
        Set<String> drawings = project.drawings().stream().map(WiringView::name).collect(Collectors.toSet());
        Shapes shapes = memory.shapes(project, cancel);
        Joining joining = new Joining();
        Units units = new Units(project, memory, settings.every());
        Work work = new Work(drawings::contains, new Writing(project::text), shapes, hearing, cancel, progress);
        Map<String, Found> found = new HashMap<>();
        List<Found> inOrder = new ArrayList<>();
        for (Unit unit : units.list(cancel, (platform, why) -> joining.tooMany("the connections of "
                + platform.name(), platform.name(), "platform " + platform.name(), why))) {
            Found here = work.plan(unit, memory.found(unit, book, settings.every(), names));
            found.put(unit.name(), here);
            inOrder.add(here);
        }
        List<Looked> looked = project.wirings().values().stream().map(work::shape).flatMap(Optional::stream).toList();
        work.run();
        List<Outcome> outcomes = inOrder.stream().flatMap(each -> each.answers().stream())
                .map(Found.Answer::outcome).toList();
        outcomes.forEach(each -> each.to(joining));
        Treatments treatments = new Treatments(project, book);
        List<Finding> findings = new ArrayList<>(treatments.apply(new Acceptances(project, book, settings)
                .apply(Fingerprints.distinct(joining.findings()))));
        treatments.problems().forEach(problem -> joining.problem(problem, Severity.ERROR));
        project.problems().forEach(problem -> joining.problem(problem, Severity.ERROR));
        looked.forEach(each -> each.to(joining));
        findings.addAll(joining.problems());
        Report report = new Report(Fingerprints.distinct(findings), new Report.Work(
                outcomes.stream().mapToLong(Outcome::targets).sum(),
                outcomes.stream().mapToLong(Outcome::checks).sum(), joining.taken()));
        return new Checked(report, new Memory(book, settings.every(), names, Optional.of(shapes), found, units.wired()),
                work.asked.get());
    }

    /** What is wrong with the texts of a project and their names, as a check reports it, without asking any rule. */
    public static List<Finding> problems(Project project) {
        Joining joining = new Joining();
        project.problems().forEach(problem -> joining.problem(problem, Severity.ERROR));
        return Fingerprints.distinct(joining.problems());
    }

    /** What is wrong with the shape of a drawing or harness. Filled by one thread, then told by another. */
    private static final class Looked {
        private final WiringView view;
        private List<Problem> problems = List.of();
        private List<Problem> unplaced = List.of();
        private Optional<String> tooMany = Optional.empty();

        Looked(WiringView view) {
            this.view = view;
        }

        void at(Shapes shapes) {
            try {
                Shapes.Shape shape = shapes.of(view);
                problems = shape.problems();
                unplaced = shape.unplaced();
            } catch (TooManyCombinations e) {
                tooMany = Optional.of(e.getMessage());
            }
        }

        boolean isSilent() {
            return problems.isEmpty() && unplaced.isEmpty() && tooMany.isEmpty();
        }

        void to(Joining joining) {
            problems.forEach(problem -> joining.problem(problem, Severity.ERROR));
            unplaced.forEach(problem -> joining.problem(problem, Severity.WARNING));
            tooMany.ifPresent(why -> joining.tooMany("the shape of " + view.name(), view.name(),
                    "drawing or harness " + view.name(), why));
        }
    }

    /** The calls of rules that one check has to make. */
    private final class Work {
        private final Predicate<String> drawing;
        private final Writing writing;
        private final Shapes shapes;
        private final Optional<Hearing> hearing;
        private final Cancel cancel;
        private final Progress progress;
        private final List<Runnable> pieces = new ArrayList<>();
        private final AtomicLong done = new AtomicLong();
        private int planned;
        private final AtomicLong asked = new AtomicLong();

        Work(Predicate<String> drawing, Writing writing, Shapes shapes, Optional<Hearing> hearing,
                Cancel cancel, Progress progress) {
            this.drawing = drawing;
            this.writing = writing;
            this.shapes = shapes;
            this.hearing = hearing;
            this.cancel = cancel;
            this.progress = progress;
        }

        /** Puts down what is to be asked about a unit and is not known; its outcomes are filled when this is run. */
        Found plan(Unit unit, Optional<Found> before) {
            int first = pieces.size();
            List<Found.Answer> answers = new ArrayList<>();
            Target large = unit.single().apply(shapes);
            Outcome counted = new Outcome();
            counted.looked(1);
            answers.add(new Found.Answer(new Reads(), counted));
            List<Runnable> solving = new ArrayList<>();
            for (Rule<?> rule : book.rules()) {
                if (rule.target().isInstance(large)) {
                    boolean solves = rule.info().scope() == RuleInfo.Scope.OPERATING_POINTS;
                    answers.add(answer(answers.size(), unit, before, (reads, outcome) ->
                            ask(rule, unit.single().apply(shapes.noting(reads)), outcome), large,
                            solves ? solving : pieces));
                }
            }
            if (!solving.isEmpty()) { // one piece, since of several threads all but one would wait for the circuits
                pieces.add(first, () -> solving.forEach(Runnable::run));
            }
            for (Supplier<List<Target>> lot : unit.lots()) {
                answers.add(answer(answers.size(), unit, before, (reads, outcome) -> {
                    List<Target> targets = lot.get();
                    outcome.looked(targets.size());
                    targets.forEach(target -> ask(target, outcome));
                }, large, pieces));
            }
            afterwards(first, unit.after());
            return new Found(unit.inputs(), answers);
        }

        /** Puts down what is to be done when the pieces from some place on are done, in whatever order. */
        private void afterwards(int first, Runnable after) {
            AtomicInteger left = new AtomicInteger(pieces.size() - first);
            for (int i = first; i < pieces.size(); i++) {
                Runnable piece = pieces.get(i);
                pieces.set(i, () -> {
                    piece.run();
                    if (left.decrementAndGet() == 0) {
                        after.run();
                    }
                });
            }
        }

        private Found.Answer answer(int index, Unit unit, Optional<Found> before, BiConsumer<Reads, Outcome> question,
                Target about, List<Runnable> to) {
            Optional<Found.Answer> known = before.flatMap(found -> found.answer(index, unit, shapes.checked()));
            if (known.isPresent()) {
                return known.get();
            }
            String name = unit.name() + " " + index;
            Optional<Found.Answer> silent = hearing.flatMap(each -> each.known(name, unit.inputs(), shapes.checked()));
            if (silent.isPresent()) {
                return silent.get();
            }
            Found.Answer answer = new Found.Answer(new Reads(), new Outcome());
            planned++;
            to.add(() -> {
                progress.report("checking " + about.words(), done.getAndIncrement(), planned);
                question.accept(answer.reads(), answer.outcome());
                hearing.ifPresent(each -> each.heard(name, unit.inputs(), answer));
            });
            return answer;
        }

        /** Puts down that a shape is to be looked at; empty when nothing is wrong with it for all that is known. */
        Optional<Looked> shape(WiringView view) {
            String name = "shape " + view.name();
            List<Object> inputs = List.of(view);
            if (hearing.flatMap(each -> each.known(name, inputs, shapes.checked())).isPresent()) {
                return Optional.empty();
            }
            Looked looked = new Looked(view);
            planned++;
            pieces.add(() -> {
                cancel.check();
                progress.report("checking the shape of " + view.name(), done.getAndIncrement(), planned);
                looked.at(shapes);
                if (looked.isSilent()) {
                    hearing.ifPresent(each -> each.heard(name, inputs, new Found.Answer(new Reads(), new Outcome())));
                }
            });
            return Optional.of(looked);
        }

        void run() {
            progress.report("checking", 0, planned);
            Crew.work(pieces, threads);
            progress.report("checked", planned, planned);
        }

        private void ask(Target target, Outcome outcome) {
            for (Rule<?> rule : book.rules()) {
                if (rule.target().isInstance(target)) {
                    ask(rule, target, outcome);
                }
            }
        }

        /** Builds the connections; where they cannot be followed, no rule is asked about them. */
        private static boolean connects(Target.OfNetwork network, Outcome outcome) {
            try {
                network.connections();
                return true;
            } catch (TooManyCombinations e) {
                String platform = network.element();
                outcome.add(new Outcome.TooMany("the connections of " + platform, platform, "platform " + platform,
                        e.getMessage()));
                return false;
            }
        }

        private <T extends Target> void ask(Rule<T> rule, Target target, Outcome outcome) {
            cancel.check();
            if (target instanceof Target.OfNetwork network && !connects(network, outcome)) {
                return;
            }
            outcome.asked();
            asked.incrementAndGet();
            Findings findings = new Findings(rule.info(), drawing, writing, cancel);
            try {
                rule.check(rule.target().cast(target), findings);
                outcome.add(findings.drafts());
            } catch (TooManyCombinations e) {
                outcome.add(new Outcome.TooMany("rule " + rule.info().id(), target.element(), target.words(),
                        e.getMessage()));
            }
        }
    }
}
