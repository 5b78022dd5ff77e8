// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.connection;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Meetings;
import org.loomwright.harness.Kit;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;

/**
 * One choice of what is fitted in each position: the factory's harnesses alone, or a kit of ours with the factory's
 * harnesses in the positions that it leaves. With an add-on the kit that it needs is fitted too.
 *
 * <p>A harness of ours takes the place of the drawings that it covers and of those that fill its position, in the
 * vehicles that it is for.
 *
 * @param platform the platform
 * @param words    what is fitted, for people
 * @param domain   the vehicles in question
 * @param fitted   the drawings and harnesses by name, drawings first
 */
public record Fitment(PlatformView platform, String words, Condition domain, Map<String, Fitted> fitted) {

    /** A drawing or harness and the vehicles in which it is fitted. */
    public record Fitted(WiringView view, Condition when) {
    }

    /** Returns all choices of a project: the factory's, each kit, and each harness of ours that is in no kit. */
    public static List<Fitment> of(Project project, PlatformView platform) {
        List<WiringView> drawings = ofPlatform(project.drawings(), platform);
        List<WiringView> harnesses = ofPlatform(project.harnesses(), platform);
        List<Fitment> fitments = new ArrayList<>();
        if (!drawings.isEmpty() || harnesses.isEmpty()) {
            fitments.add(fitment(platform, "as the factory wired it", platform.vehicles().all(), drawings, List.of()));
        }
        Set<String> inKits = new LinkedHashSet<>();
        for (Kit kit : project.kits().values()) {
            List<WiringView> contents = in(kit, harnesses);
            if (!contents.isEmpty()) {
                contents.forEach(view -> inKits.add(view.name()));
                Condition domain = anyOf(platform, contents).and(platform.vehicles().resolve(kit.when()).condition());
                fitments.add(fitment(platform, "with kit " + kit.name(), domain, drawings,
                        withNeeded(project, kit, harnesses)));
            }
        }
        for (WiringView harness : harnesses) {
            if (!inKits.contains(harness.name())) {
                fitments.add(fitment(platform, "with harness " + harness.name(), harness.when(), drawings,
                        List.of(harness)));
            }
        }
        return fitments;
    }

    /**
     * Takes it apart where no vehicle has something of two parts, so that each can be looked at alone: drawings of
     * different years, for example, never meet. The domains of the parts are disjoint; together they are this domain.
     * Vehicles for which nothing is fitted are a part of their own, the last. In order of what is fitted.
     */
    public List<Fitment> parts() {
        List<Map.Entry<String, Fitted>> each = List.copyOf(fitted.entrySet());
        List<BitSet> groups = Meetings.groups(each.stream().map(entry -> entry.getValue().when()).toList());
        if (groups.size() < 2) {
            return List.of(this);
        }
        List<Fitment> parts = new ArrayList<>();
        Condition rest = domain;
        for (BitSet group : groups) {
            Map<String, Fitted> some = new LinkedHashMap<>();
            group.stream().forEach(at -> some.put(each.get(at).getKey(), each.get(at).getValue()));
            Condition any = platform.vehicles().anyOf(some.values().stream().map(Fitted::when).toList());
            parts.add(new Fitment(platform, words, any, some));
            rest = rest.minus(any);
        }
        if (!rest.isNever()) {
            parts.add(new Fitment(platform, words, rest, Map.of()));
        }
        return parts;
    }

    private static List<WiringView> in(Kit kit, List<WiringView> harnesses) {
        return harnesses.stream().filter(view -> kit.contents().stream()
                .anyMatch(content -> content.item().text().equals(view.name()))).toList();
    }

    /** The harnesses of a kit, before them those of the kit that it needs, and of the one that that one needs. */
    private static List<WiringView> withNeeded(Project project, Kit kit, List<WiringView> harnesses) {
        List<WiringView> all = List.of();
        Set<String> seen = new HashSet<>();
        for (Kit next = kit; next != null && seen.add(next.name().text());) {
            List<WiringView> more = new ArrayList<>(in(next, harnesses));
            all.stream().filter(view -> more.stream().noneMatch(each -> each == view)).forEach(more::add);
            all = more;
            next = next.needs().map(need -> project.kits().get(need.kit().text())).orElse(null);
        }
        return List.copyOf(all);
    }

    private static List<WiringView> ofPlatform(List<WiringView> views, PlatformView platform) {
        return views.stream().filter(view -> view.platform().vehicles() == platform.vehicles()).toList();
    }

    private static Condition anyOf(PlatformView platform, List<WiringView> views) {
        return platform.vehicles().anyOf(views.stream().map(WiringView::when).toList());
    }

    private static Fitment fitment(PlatformView platform, String words, Condition domain, List<WiringView> drawings,
            List<WiringView> ours) {
        Map<String, Fitted> fitted = new LinkedHashMap<>();
        for (WiringView drawing : drawings) {
            Condition left = drawing.when().and(domain);
            for (WiringView harness : ours) {
                if (replaces(harness, drawing)) {
                    left = left.minus(harness.when());
                }
            }
            if (!left.isNever()) {
                fitted.put(drawing.name(), new Fitted(drawing, left));
            }
        }
        ours.forEach(harness -> fitted.put(harness.name(), new Fitted(harness, harness.when().and(domain))));
        return new Fitment(platform, words, domain, fitted);
    }

    private static boolean replaces(WiringView harness, WiringView drawing) {
        boolean samePosition = harness.wiring().position().isPresent() && drawing.wiring().position().isPresent()
                && harness.wiring().position().get().text().equals(drawing.wiring().position().get().text());
        return samePosition || harness.covers().contains(drawing.name());
    }

    /** Returns whether a harness of ours is fitted, so that the factory's part is only the surroundings. */
    public boolean ours() {
        return fitted.values().stream().anyMatch(each -> each.view().wiring().isHarness());
    }

    /** Returns whether a name is that of a harness of ours. */
    public boolean isOurs(String owner) {
        Fitted found = fitted.get(owner);
        return found != null && found.view().wiring().isHarness();
    }
}
