// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.app.sheet.KitList;
import org.loomwright.app.sheet.PartsList;
import org.loomwright.app.sheet.Table;
import org.loomwright.app.sheet.WireList;
import org.loomwright.geometry.HarnessLayout;
import org.loomwright.harness.Kit;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;

/** Makes the bench's lists: of each harness a wire list and a parts list, of each kit a list of its box. Pure. */
public final class MakeSheets {

    private MakeSheets() {
    }

    /**
     * The lists of all harnesses and kits, in the order of the sources. No two have the same file name, whatever the
     * file system thinks of capitals.
     */
    public static List<Table> of(Project project) {
        List<Table> tables = new ArrayList<>();
        project.harnesses().forEach(harness -> add(harness, project, tables));
        project.kits().values().forEach(kit -> tables.add(KitList.of(kit, project)));
        return apart(tables);
    }

    /**
     * The lists of one harness, or of one kit and the harnesses in it.
     *
     * @throws BadCall if the project has no harness and no kit of that name
     */
    public static List<Table> of(Project project, String name) throws BadCall {
        List<Table> tables = new ArrayList<>();
        Optional<WiringView> harness = project.wiring(name).filter(view -> view.wiring().isHarness());
        Kit kit = project.kits().get(name);
        if (harness.isEmpty() && kit == null) {
            throw new BadCall("no harness and no kit is called '" + name + "'" + names(project));
        }
        harness.ifPresent(view -> add(view, project, tables));
        if (kit != null) {
            for (Kit.Content content : kit.contents()) {
                project.wiring(content.item().text()).filter(view -> view.wiring().isHarness())
                        .ifPresent(view -> add(view, project, tables));
            }
            tables.add(KitList.of(kit, project));
        }
        return apart(tables);
    }

    private static void add(WiringView harness, Project project, List<Table> tables) {
        HarnessLayout layout = HarnessLayout.of(harness, project.parts());
        tables.add(WireList.of(layout));
        tables.add(PartsList.of(layout));
    }

    private static String names(Project project) {
        Set<String> names = new TreeSet<>(new NaturalOrder());
        project.harnesses().forEach(view -> names.add(view.name()));
        names.addAll(project.kits().keySet());
        return names.isEmpty() ? "; the project has none" : "; there is " + String.join(", ", names);
    }

    private static List<Table> apart(List<Table> tables) {
        Set<String> taken = new HashSet<>();
        List<Table> apart = new ArrayList<>();
        for (Table table : tables) {
            String name = table.name();
            for (int i = 2; !taken.add(name.toLowerCase(Locale.ROOT)); i++) {
                name = table.name().replace(".csv", "-" + i + ".csv");
            }
            apart.add(new Table(name, table.headers(), table.rows()));
        }
        return List.copyOf(apart);
    }
}
