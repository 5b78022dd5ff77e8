// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.loomwright.compare.ItemId;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Element;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Waiver;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Project;

/** Takes a project apart into elements and facts. In which file an element stands is no fact. */
final class ProjectFacts {

    private final Project project;
    private final Map<String, Wiring> wirings = new HashMap<>();
    private final Map<String, Platform> platforms = new HashMap<>();
    private final List<Kit> kits = new ArrayList<>();
    private final List<Item> items = new ArrayList<>();
    private final Map<ItemId, Integer> numbers = new HashMap<>();
    private final Map<String, FactSheet.Home> homes = new HashMap<>();

    ProjectFacts(Project project) {
        this.project = project;
    }

    FactSheet sheet() {
        List<Element> elements = project.sources().stream().map(Source::elements).flatMap(List::stream).toList();
        for (Element element : elements) {
            switch (element) {
                case Wiring wiring -> wirings.putIfAbsent(wiring.name().text(), wiring);
                case Platform platform -> platforms.putIfAbsent(platform.name().text(), platform);
                case Kit kit -> kits.add(kit);
                case Catalogue catalogue -> { }
                case Waiver waiver -> { }
                case Practice practice -> { }
            }
        }
        elements.forEach(this::home);
        elements.parallelStream().map(this::read).toList().forEach(items -> items.forEach(this::add));
        waivers(elements);
        return new FactSheet(FactSheet.inOrder(items), homes, project.platforms());
    }

    private void home(Element element) {
        switch (element) {
            case Platform platform -> homes.put(platform.name().text(),
                    new FactSheet.Home(platform.name().text(), new Expression.Always()));
            case Wiring wiring -> homes.put(wiring.name().text(),
                    new FactSheet.Home(wiring.platform().text(), whole(wiring)));
            case Kit kit -> homes.put(kit.name().text(), new FactSheet.Home(platform(kit), kit.when()));
            case Practice practice -> practice.platform().ifPresent(platform -> homes.putIfAbsent(
                    practice.name().text(), new FactSheet.Home(platform.text(), new Expression.Always())));
            case Catalogue catalogue -> { }
            case Waiver waiver -> { }
        }
    }

    /** What one element and all in it state. Reads only, so that several threads can do it. */
    private List<Item> read(Element element) {
        List<Item> read = new ArrayList<>();
        Consumer<ItemBuilder> sink = builder -> read.add(builder.build());
        switch (element) {
            case Platform platform -> new PlatformFacts(platform, wirings.values(), sink).read();
            case Catalogue catalogue -> catalogue.parts().forEach(part -> sink.accept(PartFacts.of(whole(part))));
            case Wiring wiring -> new WiringFacts(wiring, new Names(wiring, wirings, platforms), sink).read();
            case Kit kit -> sink.accept(KitFacts.of(kit, wirings.keySet()));
            case Waiver waiver -> { } // read last: it names elements of others
            case Practice practice -> sink.accept(KitFacts.of(practice));
        }
        read.sort(Comparator.comparing(Item::id)); // those of one name stay in the order of the source
        return read;
    }

    private void waivers(List<Element> elements) {
        List<Waiver> waivers = elements.stream().filter(Waiver.class::isInstance).map(Waiver.class::cast).toList();
        Set<String> targets = waivers.stream().map(each -> each.target().text()).collect(Collectors.toSet());
        Map<String, ItemId> named = new HashMap<>();
        for (Item item : targets.isEmpty() ? List.<Item>of() : items) {
            ItemId id = item.id();
            String home = FactSheet.home(id);
            if (targets.contains(home)) {
                named.putIfAbsent(id.owner().isEmpty() ? home : home + ":" + KitFacts.label(id), id);
            }
        }
        waivers.stream().map(each -> KitFacts.of(each, named).build()).sorted(Comparator.comparing(Item::id))
                .forEach(this::add);
    }

    /** Adds an element, under another name when there is one of its name already. */
    private void add(Item item) {
        int number = numbers.merge(item.id(), 1, Integer::sum);
        items.add(number == 1 ? item : item.named(item.id().name() + " (no. " + number + ")"));
    }

    /** The part with the facts of the one that it is like. */
    private Part whole(Part part) {
        Part joined = project.parts().get(part.name().text());
        return joined != null && joined.span().equals(part.span()) ? joined : part;
    }

    /** The vehicles of a drawing or harness; those of a harness within those of the drawings that it covers. */
    private Expression whole(Wiring wiring) {
        List<Expression> covered = new ArrayList<>();
        for (Ref ref : wiring.ours().covers()) {
            Wiring drawing = wirings.get(ref.text());
            if (drawing != null && !drawing.isHarness()) {
                covered.add(drawing.when());
            }
        }
        if (covered.isEmpty() || covered.stream().anyMatch(Expression.Always.class::isInstance)) {
            return wiring.when();
        }
        return new Expression.And(List.of(wiring.when(), Expression.anyOf(covered)));
    }

    private String platform(Kit kit) {
        Optional<String> ofContents = kit.contents().stream().map(content -> wirings.get(content.item().text()))
                .filter(wiring -> wiring != null).map(wiring -> wiring.platform().text()).findFirst();
        return kit.platform().map(Ref::text).or(() -> ofContents).orElse("");
    }
}
