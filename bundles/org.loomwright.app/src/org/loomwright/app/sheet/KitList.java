// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.app.VehicleWords;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;

/** What is in the box of a kit: quantity, item, title and vehicles, in the order of the source. */
public final class KitList {

    private static final List<String> HEADERS = List.of("quantity", "item", "title", "vehicles");

    private KitList() {
    }

    /** The list of a kit. */
    public static Table of(Kit kit, Project project) {
        Optional<PlatformView> platform = platform(kit, project);
        Optional<Condition> whole = platform.map(each -> each.vehicles().resolve(kit.when()).condition());
        List<List<String>> rows = new ArrayList<>();
        for (Kit.Content content : kit.contents()) {
            String item = content.item().text();
            rows.add(List.of(Integer.toString(content.quantity()), item, title(item, project),
                    whole.map(all -> vehicles(content, all)).orElse("")));
        }
        return new Table(kit.name().text() + "-kit.csv", HEADERS, rows);
    }

    private static String vehicles(Kit.Content content, Condition all) {
        Condition own = content.when() instanceof Expression.Always ? all
                : all.vehicles().resolve(content.when()).condition().and(all);
        return own.isNever() ? "none" : VehicleWords.of(own, all);
    }

    /** The platform that the kit names, else that of the first harness in it. */
    private static Optional<PlatformView> platform(Kit kit, Project project) {
        Optional<PlatformView> named = kit.platform().map(ref -> project.platforms().get(ref.text()));
        return named.or(() -> kit.contents().stream().map(Kit.Content::item).map(Ref::text)
                .flatMap(item -> project.wiring(item).stream()).map(WiringView::platform).findFirst());
    }

    private static String title(String item, Project project) {
        Map<String, Part> parts = project.parts();
        return project.wiring(item).map(view -> view.wiring().title())
                .orElseGet(() -> parts.containsKey(item) ? parts.get(item).title() : "");
    }
}
