// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.condition.Condition;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Element;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Name;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.Waiver;
import org.loomwright.harness.Wiring;

/**
 * Joins sources: catalogues first, then platforms, then drawings before the harnesses that cover them. What an earlier
 * run made of the same objects is taken over.
 */
final class Linker {

    private final List<Source> sources;
    private final int mostNodes;
    private final Problems problems;
    private final Shelf shelf;
    private final PartLinker partLinker;
    private final Map<String, PlatformView> platforms = new LinkedHashMap<>();
    private final Set<String> unread = new HashSet<>();
    private final Map<String, Wiring> wirings = new LinkedHashMap<>();
    private final Map<String, WiringView> views = new LinkedHashMap<>();
    private final Map<String, Kit> kits = new LinkedHashMap<>();
    private final List<Waiver> waivers = new ArrayList<>();
    private final Map<String, Practice> practices = new LinkedHashMap<>();
    private List<Practice> judging = List.of();
    private final Reuse reuse;
    private final List<Catalogue> catalogues = new ArrayList<>();
    private final Map<String, Linked<Platform, PlatformView>> linkedPlatforms = new LinkedHashMap<>();
    private final Map<String, Linked<Wiring, WiringView>> linkedWirings = new LinkedHashMap<>();
    private Parts parts;
    private int afresh;

    Linker(List<Source> sources, Shelf shelf) {
        this(sources, shelf, Vehicles.MOST_NODES);
    }

    /** With another bound on the work that the conditions of one platform may take; see {@link Vehicles#of}. */
    Linker(List<Source> sources, Shelf shelf, int mostNodes) {
        this(sources, shelf, mostNodes, Optional.empty());
    }

    /** With what an earlier run made. */
    Linker(List<Source> sources, Shelf shelf, int mostNodes, Optional<LinkedProject> before) {
        this.mostNodes = mostNodes;
        this.reuse = new Reuse(before);
        this.sources = sources.stream().sorted(Comparator.comparing(Source::file)).toList();
        this.shelf = shelf;
        this.problems = new Problems(this.sources);
        this.partLinker = new PartLinker(problems, shelf);
    }

    Project link() {
        return linked().project();
    }

    LinkedProject linked() {
        List<Platform> unlinked = new ArrayList<>();
        for (Source source : sources) {
            for (Element element : source.elements()) {
                switch (element) {
                    case Catalogue catalogue -> {
                        catalogues.add(catalogue);
                        catalogue.parts().forEach(partLinker::add);
                    }
                    case Platform platform -> unlinked.add(platform);
                    case Wiring wiring -> put("drawings or harnesses", wirings, wiring);
                    case Kit kit -> put("kits", kits, kit);
                    case Waiver waiver -> waivers.add(waiver);
                    case Practice practice -> put("practices", practices, practice);
                }
            }
        }
        Set<String> missing = PartNames.usedBy(sources);
        missing.removeIf(partLinker::isWholeHere);
        Map<String, Span> damaged = DamagedParts.in(this.sources, missing);
        Set<String> taken = taken(missing, damaged);
        List<Source> stock = taken.isEmpty() ? List.of() : reuse.stock(taken).orElseGet(() -> shelf.take(taken));
        partLinker.addReady(stock);
        Parts fresh = partLinker.link(damaged.keySet());
        parts = reuse.parts(catalogues, taken, damaged.keySet()).orElse(fresh);
        judging = List.copyOf(practices.values());
        for (Platform platform : unlinked) {
            PlatformView before = platforms.get(platform.name().text());
            if (before == null) {
                link(platform);
            } else {
                problems.twice("platforms", platform.name(), before.platform().name());
            }
        }
        link(Wiring.Kind.DRAWING);
        link(Wiring.Kind.HARNESS);
        Map<String, WiringView> inOrder = new LinkedHashMap<>();
        wirings.keySet().stream().filter(views::containsKey).forEach(name -> inOrder.put(name, views.get(name)));
        kits.values().forEach(this::kit);
        waivers.forEach(this::waiver);
        new PracticeLinker(problems).check(judging, platforms.keySet(), unread);
        Project project = new Project(sources, stock, Collections.unmodifiableMap(platforms), parts.byName(),
                Collections.unmodifiableMap(inOrder), Collections.unmodifiableMap(kits), List.copyOf(waivers),
                judging, problems.ordered());
        return new LinkedProject(project, shelf, new LinkedProject.Known(catalogues, taken, parts), wirings,
                linkedPlatforms, linkedWirings, afresh);
    }

    /**
     * What the project uses of the shelf: names that stand for parts and that it does not explain itself. A part that
     * it states in a line that could not be read is not replaced without a word.
     */
    private Set<String> taken(Set<String> missing, Map<String, Span> damaged) {
        Set<String> names = new TreeSet<>(missing);
        if (!names.isEmpty()) {
            names.retainAll(shelf.names());
        }
        damaged.forEach((name, span) -> {
            if (names.remove(name)) {
                problems.add("part-not-read", span, "part \"" + name + "\" could not be read here, and the stock's part"
                        + " of that name does not stand in for it", "mend this line first");
            }
        });
        return names;
    }

    private <T extends Element> void put(String sort, Map<String, T> named, T element) {
        T before = element.name().text().isEmpty() ? null : named.putIfAbsent(element.name().text(), element);
        if (before != null) {
            problems.twice(sort, element.name(), before.name());
        }
    }

    private void link(Wiring.Kind kind) {
        Set<String> colours = Colours.known(parts.byName().values());
        for (Wiring wiring : wirings.values()) {
            if (wiring.kind() != kind || unread.contains(wiring.platform().text())) {
                continue;
            }
            PlatformView platform = platforms.get(wiring.platform().text());
            if (platform == null) {
                if (!wiring.platform().text().isEmpty()) {
                    problems.unknown("platform", wiring.platform(), platforms.keySet());
                }
                platform = PlatformLinker.absent(wiring.platform());
            }
            take(wiring, platform, colours);
        }
    }

    private void take(Wiring wiring, PlatformView platform, Set<String> colours) {
        Optional<Linked<Wiring, WiringView>> known = reuse.wiring(wiring, platform, wirings, views);
        Linked<Wiring, WiringView> linked = known.orElseGet(() -> {
            afresh++;
            Problems own = problems.ofPart();
            try {
                WiringView view = link(own, wiring, platform, colours);
                return new Linked<>(wiring, Optional.of(view), own.found());
            } catch (TooManyCombinations e) {
                tooMany(own, wiring.name(), e);
                return new Linked<>(wiring, Optional.empty(), own.found());
            }
        });
        problems.addAll(linked.problems());
        linkedWirings.put(wiring.name().text(), linked);
        linked.view().ifPresent(view -> views.put(wiring.name().text(), view));
    }

    private WiringView link(Problems own, Wiring wiring, PlatformView platform, Set<String> colours) {
        Facts facts = new Facts(own, platform.vehicles(), parts);
        List<String> covers = covers(own, wiring, platform);
        Condition when = facts.condition(wiring.when(), wiring.name().span(), of(covers, platform));
        return new WiringLinker(own, facts, wiring, platform, when, covers, wirings, colours).link();
    }

    private void link(Platform platform) {
        Linked<Platform, PlatformView> linked = reuse.platform(platform, parts, judging).orElseGet(() -> {
            afresh++;
            Problems own = problems.ofPart();
            try {
                PlatformView view = new PlatformLinker(own, parts, judging, mostNodes).link(platform);
                return new Linked<>(platform, Optional.of(view), own.found());
            } catch (TooManyCombinations e) {
                tooMany(own, platform.name(), e);
                return new Linked<>(platform, Optional.empty(), own.found());
            }
        });
        problems.addAll(linked.problems());
        String name = platform.name().text();
        linkedPlatforms.put(name, linked);
        linked.view().ifPresentOrElse(view -> platforms.put(name, view), () -> unread.add(name));
    }

    private static void tooMany(Problems own, Name name, TooManyCombinations cause) {
        own.add("too-many-combinations", name.span(), "\"" + name + "\" was not read to its end: "
                + cause.getMessage(), "declare choices that depend on each other next to each other");
    }

    private List<String> covers(Problems own, Wiring wiring, PlatformView platform) {
        if (wiring.ours().covers().isEmpty()) {
            return List.of();
        }
        Set<String> drawings = new TreeSet<>(new NaturalOrder());
        wirings.values().stream().filter(each -> !each.isHarness()).forEach(each -> drawings.add(each.name().text()));
        List<String> covers = new ArrayList<>();
        for (Ref ref : wiring.ours().covers()) {
            WiringView drawing = views.get(ref.text());
            if (!drawings.contains(ref.text()) || drawing == null) {
                own.unknown("drawing", ref, drawings);
            } else if (drawing.platform().vehicles() != platform.vehicles()) {
                own.add("other-platform", ref.span(), "drawing \"" + ref.text() + "\" belongs to platform \""
                        + drawing.platform().name() + "\", not to \"" + platform.name() + "\"",
                        "a harness covers drawings of its own platform");
            } else if (!covers.contains(ref.text())) {
                covers.add(ref.text());
            }
        }
        return List.copyOf(covers);
    }

    private Condition of(List<String> covers, PlatformView platform) {
        if (covers.isEmpty()) {
            return platform.vehicles().all();
        }
        Condition any = platform.vehicles().none();
        for (String name : covers) {
            any = any.or(views.get(name).when());
        }
        return any;
    }

    private void kit(Kit kit) {
        Set<String> items = new TreeSet<>(new NaturalOrder());
        items.addAll(parts.own());
        wirings.values().stream().filter(Wiring::isHarness).forEach(each -> items.add(each.name().text()));
        Optional<PlatformView> platform = platformOf(kit);
        kit.platform().filter(ref -> !platforms.containsKey(ref.text()) && !unread.contains(ref.text()))
                .ifPresent(ref -> problems.unknown("platform", ref, platforms.keySet()));
        kit.needs().filter(need -> !kits.containsKey(need.kit().text()))
                .ifPresent(need -> problems.unknown("kit", need.kit(), kits.keySet()));
        for (Kit.Content content : kit.contents()) {
            String item = content.item().text();
            if (!item.isEmpty() && !items.contains(item) && !parts.byName().containsKey(item)) {
                parts.unknown("harness or part", content.item(), items, problems);
            }
            platform.ifPresent(view -> new Facts(problems, view.vehicles(), parts)
                    .condition(content.when(), content.span(), view.vehicles().all()));
        }
        platform.ifPresent(view -> new Facts(problems, view.vehicles(), parts)
                .condition(kit.when(), kit.name().span(), view.vehicles().all()));
    }

    private void waiver(Waiver waiver) {
        String target = waiver.target().text();
        platformOf(target).ifPresent(platform -> new Facts(problems, platform.vehicles(), parts)
                .condition(waiver.when(), waiver.span(), platform.vehicles().all()));
        if (!target.isEmpty() && !wirings.containsKey(target) && !kits.containsKey(target)
                && !platforms.containsKey(target) && !unread.contains(target)) {
            Set<String> known = new TreeSet<>(new NaturalOrder());
            known.addAll(views.keySet());
            known.addAll(kits.keySet());
            known.addAll(platforms.keySet());
            problems.unknown("drawing, harness, kit or platform", waiver.target(), known);
        }
    }

    private Optional<PlatformView> platformOf(String name) {
        return Optional.ofNullable(views.get(name)).map(WiringView::platform)
                .or(() -> Optional.ofNullable(platforms.get(name)))
                .or(() -> Optional.ofNullable(kits.get(name)).flatMap(this::platformOf));
    }

    private Optional<PlatformView> platformOf(Kit kit) {
        return kit.platform().map(ref -> platforms.get(ref.text()))
                .or(() -> kit.contents().stream().map(content -> views.get(content.item().text()))
                        .filter(view -> view != null).map(WiringView::platform).findFirst());
    }
}
