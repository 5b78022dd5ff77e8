// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Axis;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.electric.ampacity.Ampacity;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.point.PointSolver;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;

/** Solves the circuits of one vehicle, mode by mode. */
public final class SolveCircuits {

    /** Words between choices that may be left out, as in {@code year = 1967 and coupe and not heater}. */
    private static final Set<String> JOINING = Set.of("and", "not");
    private static final Pattern YEAR = Pattern.compile("\\byear\\s*(([<>!]?=|[<>])\\s*)?(\\d+)");
    private static final Pattern COMPARED = Pattern.compile("([<>!]?=|[<>])?(\\d+)");

    private SolveCircuits() {
    }

    /**
     * One vehicle with what is fitted.
     *
     * @param schematic the network of what is fitted
     * @param vehicle   the vehicle
     * @param words     its choices, for people
     * @param ratings   what its wires may carry
     * @param points    one for each mode that was asked for
     */
    public record Solved(Schematic schematic, Condition vehicle, String words, Ratings ratings,
            List<OperatingPoint> points) {
    }

    /**
     * Solves one vehicle with everything that can be fitted to it: as the factory wired it, and with each kit of ours.
     *
     * @param words choices that the vehicle has, such as {@code 1967 coupe heater} or {@code year >= 1967 and not
     *              heater}; of all others the first
     * @param mode  name of a mode; empty for all
     * @throws BadCall for a vehicle or mode that does not exist
     */
    public static List<Solved> of(Project project, String words, String mode) throws BadCall {
        return of(project, Schematic.of(project), words, mode);
    }

    /** The same over networks that were built before. */
    static List<Solved> of(Project project, List<Schematic> schematics, String words, String mode) throws BadCall {
        List<Solved> all = new ArrayList<>();
        PlatformView platform = platform(project, words);
        Condition vehicle = vehicle(platform, words);
        String name = String.join(", ", vehicle.example().map(Assignment::members).orElseThrow().values().stream()
                .filter(member -> !member.startsWith("not ")).toList());
        for (Schematic schematic : schematics) {
            if (schematic.fitment().platform() == platform && vehicle.implies(schematic.fitment().domain())) {
                Ratings ratings = new Ratings(schematic, Ampacity.cfr());
                PointSolver solver = new PointSolver(schematic, Optional.of(ratings), 20);
                List<OperatingPoint> points = new ArrayList<>();
                for (Mode each : modes(schematic, mode)) {
                    points.add(solver.solve(vehicle, each));
                }
                all.add(new Solved(schematic, vehicle, name, ratings, points));
            }
        }
        if (all.isEmpty()) {
            throw new BadCall("nothing is wired in this vehicle: " + name);
        }
        return List.copyOf(all);
    }

    /** The first vehicle of some choices, without solving anything. */
    static Condition first(Project project, String words) throws BadCall {
        return vehicle(platform(project, words), words);
    }

    private static List<Mode> modes(Schematic schematic, String mode) throws BadCall {
        if (mode.isEmpty()) {
            return schematic.modes();
        }
        return List.of(schematic.mode(mode).orElseThrow(() -> new BadCall("no mode is called '" + mode + "'"
                + NearNames.or(mode, schematic.modes().stream().map(Mode::name).toList(), ""))));
    }

    /** The platform that the words are about: the only one, or the first that knows all of them. */
    private static PlatformView platform(Project project, String words) throws BadCall {
        List<PlatformView> all = List.copyOf(project.platforms().values());
        if (all.isEmpty()) {
            throw new BadCall("the project has no platform, so there is no vehicle to solve");
        }
        List<PlatformView> knowing = all.stream().filter(each -> words(words).stream()
                .allMatch(word -> JOINING.contains(word) || choice(each, word).isPresent())).toList();
        return knowing.isEmpty() ? all.getLast() : knowing.stream()
                .filter(each -> project.wirings().values().stream().anyMatch(view -> view.platform() == each))
                .max(java.util.Comparator.comparingLong(each -> project.wirings().values().stream()
                        .filter(view -> view.platform() == each).count())).orElse(knowing.getFirst());
    }

    private static List<String> words(String text) {
        String years = YEAR.matcher(text).replaceAll(each -> (each.group(2) == null ? "" : each.group(2))
                + each.group(3));
        return List.of(years.strip().split("[\\s,]+")).stream()
                .filter(word -> !word.isEmpty()).toList();
    }

    private static Optional<Expression> choice(PlatformView platform, String word) {
        for (Axis axis : platform.vehicles().choices().axes()) {
            Matcher year = COMPARED.matcher(word);
            if (axis.kind() == Axis.Kind.YEAR && year.matches() && axis.members().stream()
                    .anyMatch(each -> each.equals(year.group(2)) || each.startsWith(year.group(2) + " "))) {
                return Optional.of(new Expression.Compare(axis.name(), Relation.ofSymbol(year.group(1))
                        .orElse(Relation.EQ), year.group(2)));
            }
            if (axis.members().contains(word) || axis.isYesOrNo() && axis.name().equals(word)) {
                return Optional.of(new Expression.Choice(word));
            }
        }
        return Optional.empty();
    }

    private static Condition vehicle(PlatformView platform, String text) throws BadCall {
        Condition all = platform.vehicles().all();
        boolean not = false;
        for (String word : words(text)) {
            if (JOINING.contains(word)) {
                not |= word.equals("not");
                continue;
            }
            Optional<Expression> choice = choice(platform, word);
            if (choice.isEmpty()) {
                TreeSet<String> known = new TreeSet<>();
                platform.vehicles().choices().axes().forEach(axis -> known.addAll(axis.isYesOrNo()
                        ? List.of(axis.name()) : axis.members()));
                throw new BadCall("the platform " + platform.name() + " has no choice '" + word + "'"
                        + NearNames.or(word, known, ""));
            }
            Expression expression = not ? new Expression.Not(choice.get()) : choice.get();
            Condition next = all.and(platform.vehicles().resolve(expression).condition());
            if (next.isNever()) {
                throw new BadCall("no vehicle of the platform " + platform.name() + " has all of '" + text
                        + "'; '" + word + "' excludes the others");
            }
            all = next;
            not = false;
        }
        Assignment first = all.example().orElseThrow(() -> new BadCall("no vehicle of the platform "
                + platform.name() + " can exist"));
        return platform.vehicles().where(first);
    }
}
