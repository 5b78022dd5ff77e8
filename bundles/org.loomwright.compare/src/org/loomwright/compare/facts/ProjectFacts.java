// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
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
    private final TreeMap<ItemId, Item> items = new TreeMap<>();
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
        for (Element element : elements) {
            switch (element) {
                case Platform platform -> {
                    homes.put(platform.name().text(),
                            new FactSheet.Home(platform.name().text(), new Expression.Always()));
                    new PlatformFacts(platform, this::add).read();
                }
                case Catalogue catalogue -> catalogue.parts().forEach(part -> add(PartFacts.of(whole(part))));
                case Wiring wiring -> {
                    homes.put(wiring.name().text(), new FactSheet.Home(wiring.platform().text(), whole(wiring)));
                    new WiringFacts(wiring, new Names(wiring, wirings, platforms), this::add).read();
                }
                case Kit kit -> {
                    homes.put(kit.name().text(), new FactSheet.Home(platform(kit), kit.when()));
                    add(KitFacts.of(kit, wirings.keySet()));
                }
                case Waiver waiver -> add(KitFacts.of(waiver));
                case Practice practice -> {
                    practice.platform().ifPresent(platform -> homes.putIfAbsent(practice.name().text(),
                            new FactSheet.Home(platform.text(), new Expression.Always())));
                    add(KitFacts.of(practice));
                }
            }
        }
        return new FactSheet(items, homes, project.platforms());
    }

    private void add(ItemBuilder builder) {
        Item item = builder.build(numbers.merge(builder.id(), 1, Integer::sum));
        items.put(item.id(), item);
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
