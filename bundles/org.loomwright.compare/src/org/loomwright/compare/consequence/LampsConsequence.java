// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Labels;
import org.loomwright.compare.consequence.Effect.Direction;
import org.loomwright.compare.consequence.Effect.Line;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Axis;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.network.Subject;
import org.loomwright.electric.survey.LampSurvey;
import org.loomwright.electric.survey.LampVolts;
import org.loomwright.harness.link.Project;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/**
 * Which lamps get another voltage than before. Of a set of harnesses with at most {@link #FEW_VEHICLES} vehicles, or
 * whose vehicles have at most {@link #MOST_ASSIGNMENTS} assignments, every vehicle is solved; of a larger one the first
 * vehicle of each drawing or harness that changed with each other drawing and each choice. The line then tells of how
 * many it is the worst, and which it is. The voltage is the least while the lamp is lit, in the modes with a running
 * engine.
 */
public final class LampsConsequence implements Consequence {

    /** Of so few vehicles of a set each is solved, whatever that takes. */
    public static final int FEW_VEHICLES = 64;
    /** The most assignments, over all modes with a running engine, that are solved of a larger set. */
    public static final int MOST_ASSIGNMENTS = 1_024;

    /** A smaller difference is not told, in V. */
    public static final double TOLD = 0.05;

    private static final String SOME = "the worst of ";

    /** Of the law of light of a filament: voltage to this power (Fink and Beaty, p. 22-8). */
    private static final double LIGHT = 3.4;

    private static final Comparator<Step> WORST = Comparator.comparing((Step step) -> step.line().direction())
            .thenComparing(step -> -Math.abs(step.volts())).thenComparing(step -> step.line().subject())
            .thenComparing(step -> step.line().vehicles());

    /** What became of one lamp. */
    private record Step(Line line, double volts) {
    }

    @Override
    public Effect of(Revision revision, Cancel cancel, Progress progress) {
        Map<String, Step> steps = new LinkedHashMap<>();
        Set<String> changed = changed(revision.comparison());
        if (!changed.isEmpty()) {
            progress.report("comparing the voltage of lamps", 0, 1);
            Map<String, Schematic> before = schematics(revision.old());
            Map<String, String> names = names(revision.comparison());
            schematics(revision.now()).forEach((set, schematic) -> {
                if (before.containsKey(set)) {
                    compare(before.get(set), schematic, changed, revision.now().wirings().keySet(), names,
                            cancel).forEach(step -> steps.merge(
                            key(step.line(), set), step,
                            (one, other) -> Math.abs(other.volts()) > Math.abs(one.volts()) ? other : one));
                }
            });
        }
        List<Step> sorted = steps.values().stream().sorted(WORST).toList();
        return new Effect("lamps", "lamp voltages", sorted.stream().map(Step::line).toList(),
                sorted.stream().filter(step -> step.line().direction() == Direction.WORSE).findFirst()
                        .map(step -> step.line().subject() + " gets " + volts(Math.abs(step.volts())) + " V "
                                + (step.volts() < 0 ? "less" : "more") + " (" + step.line().before() + " -> "
                                + step.line().after() + ")"));
    }

    /** Names of the drawings, harnesses, platforms and parts, as they are called now, that have changes. */
    private static Set<String> changed(Comparison comparison) {
        return comparison.felt().stream().map(Change::item).map(FactSheet::home).collect(Collectors.toSet());
    }

    /** A lamp is told once for each set of harnesses, and once where only some vehicles were looked at. */
    private static String key(Line line, String set) {
        return line.subject() + "\u0001" + (line.vehicles().startsWith(SOME) ? SOME : set);
    }

    private static Map<String, Schematic> schematics(Project project) {
        Map<String, Schematic> all = new LinkedHashMap<>();
        boolean modes = project.platforms().values().stream().anyMatch(each -> !each.platform().modes().isEmpty());
        if (modes) {
            for (Schematic each : Schematic.of(project)) {
                if (!each.fitment().platform().platform().modes().isEmpty()) {
                    all.putIfAbsent(each.fitment().platform().name() + "\u0001" + each.fitment().words(), each);
                }
            }
        }
        return all;
    }

    /** The names of renamed elements, by those that they had: {@code front:H1}. */
    private static Map<String, String> names(Comparison comparison) {
        Map<String, String> names = new HashMap<>();
        comparison.matching().partners().forEach((old, now) -> {
            if (!old.equals(now)) {
                names.put(FactSheet.home(old) + ":" + Labels.name(old), FactSheet.home(now) + ":" + Labels.name(now));
            }
        });
        return names;
    }

    private static List<Step> compare(Schematic old, Schematic now, Set<String> changed, Set<String> wirings,
            Map<String, String> names, Cancel cancel) {
        List<Step> steps = new ArrayList<>();
        LampSurvey then = new LampSurvey(old);
        LampSurvey here = new LampSurvey(now);
        boolean all = few(old, then) && few(now, here);
        List<Assignment> examples = all ? List.of() : examples(now.fitment(), changed, wirings);
        if (!all && examples.isEmpty()) {
            return steps;
        }
        Pair pair = new Pair(then, here, names, cancel, steps);
        try {
            if (all) {
                pair.compare(old.fitment().domain(), now.fitment().domain(), "");
            }
            for (Assignment vehicle : examples) {
                Condition is = now.fitment().platform().vehicles().where(vehicle);
                Condition was = old.fitment().platform().vehicles().where(vehicle);
                if (was.implies(old.fitment().domain()) && !was.isNever()) {
                    pair.compare(was, is, SOME + examples.size() + " vehicles looked at: " + words(vehicle));
                }
            }
        } catch (IllegalArgumentException | TooManyCombinations e) {
            return steps; // a vehicle has a choice that the old platform did not know
        }
        return steps;
    }

    private static boolean few(Schematic schematic, LampSurvey survey) {
        Condition domain = schematic.fitment().domain();
        return domain.count().compareTo(BigInteger.valueOf(FEW_VEHICLES)) <= 0
                || survey.isWithin(domain, MOST_ASSIGNMENTS);
    }

    /**
     * The first vehicle of each fitted drawing or harness that changed, or of all when it is the platform or a part;
     * and of these the first one with each other drawing, and with each choice.
     */
    private static List<Assignment> examples(Fitment fitment, Set<String> changed, Set<String> wirings) {
        List<Condition> among = fitment.fitted().values().stream()
                .filter(each -> changed.contains(each.view().name()))
                .map(each -> each.when().and(fitment.domain())).toList();
        List<Condition> with = new ArrayList<>(List.of(fitment.domain()));
        fitment.fitted().values().forEach(each -> with.add(each.when()));
        for (Axis axis : fitment.platform().vehicles().choices().axes()) {
            if (axis.kind() != Axis.Kind.YEAR) {
                (axis.isYesOrNo() ? List.of(axis.name()) : axis.members()).forEach(member -> with.add(fitment.platform()
                        .vehicles().resolve(new Expression.Choice(member)).condition()));
            }
        }
        boolean others = changed.stream().anyMatch(each -> !wirings.contains(each));
        return (among.isEmpty() && others ? List.of(fitment.domain()) : among).stream()
                .flatMap(each -> with.stream().flatMap(other -> each.and(other).example().stream()))
                .distinct().toList();
    }

    private static String words(Assignment vehicle) {
        return vehicle.members().values().stream().filter(member -> !member.startsWith("not "))
                .collect(Collectors.joining(", "));
    }

    /** The lamps of one set of harnesses on both sides. */
    private record Pair(LampSurvey old, LampSurvey now, Map<String, String> names, Cancel cancel, List<Step> steps) {

        void compare(Condition then, Condition here, String vehicle) {
            Optional<List<LampVolts>> before = old.least(then, cancel);
            Optional<List<LampVolts>> after = now.least(here, cancel);
            if (before.isEmpty() || after.isEmpty()) {
                return;
            }
            Map<String, LampVolts> lamps = new HashMap<>();
            before.get().forEach(each -> lamps.put(key(each, names), each));
            for (LampVolts each : after.get()) {
                LampVolts was = lamps.get(key(each, Map.of()));
                if (was != null && Math.abs(each.volts() - was.volts()) >= TOLD) {
                    steps.add(step(was, each, vehicle.isEmpty() ? each.when().words() : vehicle));
                }
            }
        }
    }

    /** A lamp with several filaments is a piece for each, told apart by its label. */
    private static String key(LampVolts lamp, Map<String, String> names) {
        Subject subject = lamp.lamp().subject();
        String name = subject.owner() + ":" + subject.element();
        String label = subject.label();
        int pins = label.lastIndexOf(", ");
        return names.getOrDefault(name, name) + (pins < 0 ? "" : label.substring(pins));
    }

    private static Step step(LampVolts was, LampVolts is, String vehicles) {
        double gain = is.volts() - was.volts();
        long light = Math.round(100 * Math.pow(is.volts() / Math.max(was.volts(), 1e-9), LIGHT));
        return new Step(new Line(gain < 0 ? Direction.WORSE : Direction.OTHER, is.lamp().subject().label(),
                light + " % of its light in mode " + is.mode().name() + ", least voltage", volts(was.volts()) + " V",
                volts(is.volts()) + " V", vehicles, Optional.empty()), gain);
    }

    private static String volts(double volts) {
        return String.format(Locale.ROOT, "%.2f", volts);
    }
}
