// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.geometry.Route;
import org.loomwright.geometry.Spot;
import org.loomwright.geometry.TreeRun;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.WiringView.StudView;
import org.loomwright.quantity.Length;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;
import org.loomwright.sheets.content.Words;

/** What the installer does, along the run: out with the old, pin, thread, route, plug, ground, cap. */
final class InstallationSteps {

    private final Order order;
    private final LaidHarness harness;
    private final List<String> steps = new ArrayList<>();

    InstallationSteps(Order order, LaidHarness harness) {
        this.order = order;
        this.harness = harness;
    }

    private record Station(double at, String text) {
    }

    List<String> steps() {
        steps.add("Disconnect the battery's ground, and keep it away from the post until the last step.");
        String position = harness.view().wiring().position().map(Ref::text).flatMap(name -> order.platform().platform()
                .positions().stream().filter(each -> each.name().text().equals(name)).findFirst())
                .map(each -> each.title().isEmpty() ? each.name().text() : each.title()).orElse("");
        if (!harness.view().covers().isEmpty()) {
            steps.add("Take out the factory's " + (position.isEmpty() ? "wiring" : position.toLowerCase(
                    java.util.Locale.ROOT)) + ". Leave lamps, switches and units in their places.");
        }
        harness.tree().datum().ifPresent(datum -> steps.add("Lay the harness out along its way. Its datum belongs"
                + " here: " + harness.place(datum.name()) + "."));
        at(Optional.empty());
        for (TreeRun run : harness.tree().runs()) {
            if (run.run().kind() == Run.Kind.TRUNK && !run.when().excludes(harness.vehicles())) {
                trunk(run);
            }
        }
        steps.add("Put every clip and tie in its place, then look along the whole run: nothing rubs, nothing hangs,"
                + " nothing lies on what gets hot or moves.");
        steps.add("Do the checks before power is switched on. Connect the battery's ground last.");
        return List.copyOf(steps);
    }

    private void trunk(TreeRun run) {
        List<Station> stations = new ArrayList<>();
        run.run().barriers().forEach(each -> each.at().length().ifPresent(at -> stations.add(new Station(
                at.toMillimetres(), "Thread the trunk \"" + run.name() + "\" through " + each.name() + " ("
                        + Words.mm(at) + " mm from the datum)." + loose(run, at, opening(run, at))))));
        for (Wiring.Placed placed : harness.view().wiring().placed()) {
            if (placed.to().isEmpty() && !harness.resolve(placed.when()).isNever()) {
                harness.tree().spots(placed.from()).stream().map(Case::value)
                        .filter(each -> each.run().equals(run.name())).findFirst()
                        .ifPresent(spot -> spot.station().length().ifPresent(at -> placed(run, placed, at, stations)));
            }
        }
        for (Spot point : run.points()) {
            point.station().length().filter(any -> point.kind() == Spot.Kind.BREAKOUT).ifPresent(at -> stations.add(
                    new Station(at.toMillimetres() + 1e-6, "\n" + point.name())));
        }
        stations.sort(Comparator.comparingDouble(Station::at));
        for (Station station : stations) {
            if (station.text().startsWith("\n")) {
                at(Optional.of(station.text().substring(1)));
            } else {
                steps.add(station.text());
            }
        }
    }

    private void placed(TreeRun run, Wiring.Placed placed, Length at, List<Station> stations) {
        Optional<Part> part = harness.part(placed.part().text());
        String title = Words.title(placed.part().text(), harness.parts());
        String only = only(harness.resolve(placed.when()));
        if (part.filter(each -> each.kind() == Part.Kind.OPENING).isPresent()) {
            boolean threaded = run.run().barriers().stream().anyMatch(each -> each.at().length()
                    .filter(at::equals).isPresent()); // then that step has said what is left off
            stations.add(new Station(at.toMillimetres() + 1e-7, "Seat " + placed.name() + ", " + title + ", at "
                    + Words.mm(at) + " mm" + only + "." + (threaded ? "" : loose(run, at, part))));
        } else {
            stations.add(new Station(at.toMillimetres(), "Fasten " + placed.name() + ", " + title + ", at "
                    + Words.mm(at) + " mm" + only + "."));
        }
    }

    /** The opening that is placed at a station, whose bore tells what passes there. */
    private Optional<Part> opening(TreeRun run, Length at) {
        return harness.view().wiring().placed().stream().filter(each -> each.to().isEmpty() && !harness.resolve(
                each.when()).isNever() && harness.tree().spots(each.from()).stream().map(Case::value).anyMatch(spot ->
                spot.run().equals(run.name()) && spot.station().length().filter(at::equals).isPresent()))
                .flatMap(each -> harness.part(each.part().text()).stream())
                .filter(each -> each.kind() == Part.Kind.OPENING).findFirst();
    }

    /** What does not pass an opening and so is fitted behind it. */
    private String loose(TreeRun run, Length at, Optional<Part> opening) {
        Optional<Double> bore = opening.flatMap(each -> each.figure(FigureKind.BORE)).map(each -> each.from().si());
        List<String> loose = new ArrayList<>();
        List<String> open = new ArrayList<>();
        for (ConnectorView connector : harness.view().connectors().values()) {
            boolean beyond = harness.spots().of(connector.cavity("")).stream()
                    .anyMatch(each -> isBeyond(run, at, each.value()));
            if (!beyond || connector.when().excludes(harness.vehicles())) {
                continue;
            }
            Optional<Double> widest = connector.housings().stream().flatMap(each -> each.value()
                    .figure(FigureKind.DIAMETER).stream()).map(each -> each.from().si()).max(Double::compare);
            if (widest.isPresent() && bore.isPresent() && widest.get() > bore.get()) {
                loose.add(connector.name());
            } else if (widest.isEmpty() || bore.isEmpty()) {
                open.add(connector.name());
            }
        }
        return (loose.isEmpty() ? "" : " Leave off until through, tag each end with its cavity: "
                + String.join(", ", loose) + ".") + (open.isEmpty() ? "" : " Try whether these pass before they are"
                        + " fitted, their size is not in the catalogue: " + String.join(", ", open) + ".");
    }

    private boolean isBeyond(TreeRun run, Length station, Spot spot) {
        if (harness.tree().datum().isEmpty()) {
            return false;
        }
        for (Route.Leg leg : harness.tree().route(harness.tree().datum().get(), spot).legs()) {
            Optional<Length> end = leg.to().station().length();
            if (leg.run().equals(run.name()) && end.isPresent() && end.get().compareTo(station) >= 0) {
                return true;
            }
        }
        return false;
    }

    /** The branches of a breakout, or what is at the datum. */
    private void at(Optional<String> breakout) {
        if (breakout.isEmpty()) {
            ends("", "At the datum: ");
        }
        for (TreeRun run : harness.tree().runs()) {
            boolean here = run.run().kind() == Run.Kind.BRANCH && (breakout.isPresent()
                    ? run.start().name().equals(breakout.get()) : run.start().kind() == Spot.Kind.DATUM);
            if (!here || run.when().excludes(harness.vehicles())) {
                continue;
            }
            String place = run.run().to().map(each -> harness.place(each.text())).orElse("its end");
            String state = InstallationSheet.state(harness, run.name());
            if (state.startsWith("CAPPED")) {
                steps.add("Branch " + run.name() + ": " + state.replace("CAPPED", "put a cap on its end, tape it")
                        + ". It must not be live and must not hang loose.");
                continue;
            }
            steps.add("Lead branch " + run.name() + " to " + place + only(run.when()) + (state.equals("used") ? ""
                    : " (" + state + ")") + ". Dress back what is too long where it can be reached.");
            ends(run.name(), "There, ");
        }
    }

    private void ends(String run, String before) {
        for (ConnectorView connector : harness.view().connectors().values()) {
            Condition when = connector.when().and(harness.vehicles());
            if (!when.isNever() && isAt(run, harness.spots().of(connector.cavity("")))) {
                List<String> mates = connector.mates().stream().filter(each -> !each.when().excludes(when))
                        .map(each -> title(each.value()) + only(each.when().and(when), when)).distinct().toList();
                steps.add(before + (mates.isEmpty() ? "connector " + connector.name() + " " + connector.connector()
                        .title() + only(when) + "." : "plug " + connector.name() + " " + connector.connector().title()
                                + only(when) + " into " + String.join(", or ", mates) + " until it locks."));
            }
        }
        for (StudView stud : harness.view().studs().values()) {
            if (!stud.when().excludes(harness.vehicles()) && isAt(run, harness.spots().of(stud.node()))) {
                steps.add(before + "bolt ground " + stud.stud().name() + " to " + stud.stud().ground().map(Ref::text)
                        .orElse("ground") + only(stud.when()) + ": bare clean metal, toothed washer, then grease.");
            }
        }
    }

    private static boolean isAt(String run, List<Case<Spot>> spots) {
        return spots.stream().anyMatch(each -> each.value().run().equals(run));
    }

    private String title(ConnectorView.Mate mate) {
        return mate.device() ? Optional.ofNullable(order.platform().devices().get(mate.element()))
                .map(each -> each.device().title()).filter(each -> !each.isEmpty()).orElse(mate.element())
                : mate.element() + " of " + mate.owner();
    }

    private String only(Condition when) {
        return only(when.and(harness.vehicles()), harness.vehicles());
    }

    private static String only(Condition when, Condition within) {
        return within.implies(when) ? "" : " (only " + Words.of(when) + ")";
    }
}
