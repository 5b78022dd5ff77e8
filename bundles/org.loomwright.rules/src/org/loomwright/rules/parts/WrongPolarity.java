// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Edge;
import org.loomwright.electric.connection.Path;
import org.loomwright.electric.connection.Point;
import org.loomwright.electric.connection.Reach;
import org.loomwright.electric.connection.Supply;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.link.Case;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/**
 * A device that minds its polarity and is connected the wrong way round in some vehicle: the pin that must see the
 * insulated pole leads to ground only, and another one to the insulated pole only. A pin that leads to both, or of
 * which nothing is known, is no evidence.
 */
public final class WrongPolarity implements Rule<Target.OfNetwork> {

    private static final RuleInfo INFO = new RuleInfo("wrong-polarity",
            "Is every device connected the right way round?", Severity.ERROR, Kind.TRANSCRIPTION,
            Scope.PROTECTION_TREE, "the polarity that the catalogue states, and the platform's grounded pole");
    private static final Set<String> POSITIVE = Set.of("plus", "pos", "positive");
    private static final Set<String> NEGATIVE = Set.of("minus", "neg", "negative");
    private static final Predicate<Edge> ANY = edge -> true;

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfNetwork> target() {
        return Target.OfNetwork.class;
    }

    @Override
    public void check(Target.OfNetwork target, Findings findings) {
        Connections connections = target.connections();
        List<FittedDevice> asked = new ArrayList<>();
        for (FittedDevice device : FittedDevice.of(connections.fitment())) {
            Optional<String> pin = insulated(device.part());
            if (pin.isPresent() && !otherPole(connections, device, pin.get(), findings)
                    && device.part().kind() != Part.Kind.SOURCE) {
                asked.add(device);
            }
        }
        if (asked.isEmpty()) {
            return;
        }
        Reach fed = connections.live();
        Reach ground = connections.grounded();
        for (FittedDevice device : asked) {
            findings.checkCancelled();
            device(connections, device, insulated(device.part()).orElseThrow(), fed, ground, findings);
        }
    }

    private static Optional<String> insulated(Part part) {
        return part.word(Part.WordKind.POLARITY).filter(part::hasPin);
    }

    /** A pin that is called after the pole which this platform has at ground; returns whether it is one. */
    private static boolean otherPole(Connections connections, FittedDevice device, String pin, Findings findings) {
        Optional<Platform.Supply> supply = connections.fitment().platform().platform().supply();
        String name = pin.toLowerCase(Locale.ROOT);
        if (supply.isEmpty() || !(supply.get().negativeGround() ? NEGATIVE : POSITIVE).contains(name)) {
            return false;
        }
        String grounded = supply.get().negativeGround() ? "negative" : "positive";
        draft(device, device.when(), "pole", findings)
                .says(device.name() + " is a part whose pin " + pin + " must see the insulated pole, and the platform"
                        + " has its " + grounded + " pole at ground")
                .see(supply.get().span(), grounded + " ground")
                .advise("fit the part that is made for " + grounded + " ground, or state its other pin as polarity if"
                        + " it may be turned round")
                .report();
        return true;
    }

    private static void device(Connections connections, FittedDevice device, String pin, Reach fed, Reach ground,
            Findings findings) {
        Point insulated = device.pin(pin);
        Condition grounded = device.when().and(ground.at(insulated)).minus(fed.at(insulated));
        if (grounded.isNever()) {
            return;
        }
        for (Part.Pin other : device.part().pins()) {
            Point point = device.pin(other.name().text());
            Condition wrong = point.equals(insulated) ? grounded.vehicles().none()
                    : grounded.and(fed.at(point)).minus(ground.at(point));
            if (!wrong.isNever()) {
                Draft draft = draft(device, wrong, other.name().text(), findings)
                        .says(device.name() + " is connected the wrong way round: its pin " + pin
                                + " must see the insulated pole and leads to ground, and pin " + other.name()
                                + " is fed")
                        .advise("change over the two wires, or correct the cavities or the polarity of the part");
                way("ground", connections, connections.grounds(), insulated, wrong, ANY, draft);
                Map<Point, Condition> live = connections.supplies().stream().flatMap(WrongPolarity::live)
                        .collect(Collectors.toMap(Case::value, Case::when, Condition::or,
                                LinkedHashMap::new));
                way("insulated pole", connections, live, point, wrong, edge -> !edge.isGround(), draft);
                draft.report();
            }
        }
    }

    private static Stream<Case<Point>> live(Supply supply) {
        return supply.live().stream().map(pin -> new Case<>(pin, supply.when(),
                supply.device().device().name().span()));
    }

    private static void way(String from, Connections connections, Map<Point, Condition> starts, Point goal,
            Condition when, Predicate<Edge> passes, Draft draft) {
        Path.find(connections, starts, goal, when, passes).ifPresent(points -> draft.step("from the " + from + ": "
                + points.stream().map(Point::toString).collect(Collectors.joining(" - "))));
    }

    private static Draft draft(FittedDevice device, Condition when, String key, Findings findings) {
        return findings.about(device.view().owner(), device.name(), "device " + device.name()).when(when).key(key)
                .at(device.view().device().name().span(), "part " + device.part().name())
                .see(device.part().name().span(), "part " + device.part().name());
    }
}
