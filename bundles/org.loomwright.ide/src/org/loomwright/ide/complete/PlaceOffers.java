// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.lang.words.Slot;

/** Places of the platform and points of the harness: those that the drawing reaches, or does not reach yet. */
final class PlaceOffers {

    private PlaceOffers() {
    }

    static void places(Slot slot, Asked asked, Offers offers) {
        asked.platform().ifPresent(platform -> {
            Map<String, String> reached = asked.wiring().map(PlaceOffers::reached).orElse(Map.of());
            boolean only = asked.wiring().isPresent() && switch (slot.property()) {
                case "Connector.place", "Stud.place", "LimitSetting.place", "MadeSetting.place", "Cap.parkedAt" -> true;
                default -> false;
            };
            for (Platform.Place place : platform.platform().places()) {
                String name = place.name().text();
                if (only && !reached.containsKey(name) || !meets(asked, platform, place)) {
                    continue;
                }
                boolean taken = slot.property().equals("Branch.to") && reached.containsKey(name);
                String by = reached.getOrDefault(name, "");
                offers.add(Kind.PLACE, name, place.title(), by.isEmpty() ? "" : "reached by " + by, taken ? 1 : 0);
            }
        });
    }

    private static boolean meets(Asked asked, PlatformView platform, Platform.Place place) {
        Condition when = platform.vehicles().resolve(place.when()).condition();
        return asked.meets(when);
    }

    /** The places that a drawing or harness comes to, and by what. */
    static Map<String, String> reached(WiringView view) {
        Map<String, String> reached = new HashMap<>();
        view.wiring().datum().map(Ref::text).ifPresent(place -> reached.put(place, "the datum"));
        for (Run run : view.wiring().runs()) {
            run.to().map(Ref::text).ifPresent(place -> reached.merge(place, run.name().text(),
                    (one, other) -> one + ", " + other));
        }
        return reached;
    }

    static void points(Slot slot, Asked asked, Offers offers) {
        asked.wiring().ifPresent(view -> {
            boolean start = slot.property().equals("Branch.from");
            Set<String> breakouts = new LinkedHashSet<>();
            for (Run run : view.wiring().runs()) {
                run.breakouts().forEach(each -> breakouts.add(each.name().text()));
                run.breakouts().forEach(each -> offers.add(Kind.POINT, each.name().text(), "breakout of " + run.name()
                        + each.at().value().map(at -> " at " + at).orElse(""), "", 0));
            }
            view.wiring().datum().map(Ref::text).ifPresent(place -> offers.add(Kind.PLACE, place, "the datum", "", 1));
            if (!start) {
                view.wiring().runs(Run.Kind.BRANCH).forEach(run -> offers.add(Kind.POINT, run.name().text(),
                        "end of the branch", run.to().map(to -> "to " + to).orElse(""), 2));
            }
        });
    }

    /** The place where a connector is: its own, or the one that its branch goes to. */
    static Optional<String> of(WiringView view, Optional<Ref> place, Optional<Ref> branch) {
        return place.map(Ref::text).or(() -> branch.flatMap(ref -> view.run(ref.text())).flatMap(Run::to)
                .map(Ref::text));
    }
}
