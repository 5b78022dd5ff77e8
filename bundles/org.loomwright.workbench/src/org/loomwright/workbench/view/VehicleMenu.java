// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.app.VehicleWords;
import org.loomwright.condition.Axis;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Platform;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.workbench.focus.Choice;

/**
 * What can be chosen about the vehicles of a platform, given what is chosen already.
 *
 * @param platforms the names of all platforms
 * @param platform  the one that the rows are about; empty when there is none
 * @param rows      a row for each choice, in order
 * @param words     how many vehicles remain
 */
public record VehicleMenu(List<String> platforms, String platform, List<Row> rows, String words) {

    public VehicleMenu {
        platforms = List.copyOf(platforms);
        rows = List.copyOf(rows);
    }

    /**
     * One choice.
     *
     * @param axis    its name
     * @param title   words for people
     * @param options what can be chosen
     * @param chosen  index of what is chosen, -1 for nothing
     */
    public record Row(String axis, String title, List<Option> options, int chosen) {

        public Row {
            options = List.copyOf(options);
        }
    }

    /** One thing that can be chosen; not possible when no vehicle has it beside all else that is chosen. */
    public record Option(String member, String title, boolean possible) {
    }

    /** Works it out. Grows with the number of members of all choices. */
    public static VehicleMenu of(Project project, Choice choice) {
        List<String> names = List.copyOf(project.platforms().keySet());
        String name = names.contains(choice.platform()) ? choice.platform() : largest(project);
        PlatformView view = project.platforms().get(name);
        if (view == null) {
            return new VehicleMenu(names, "", List.of(), "No platform is declared in this project.");
        }
        Map<String, String> titles = titles(view.platform());
        Vehicles vehicles = view.vehicles();
        Choice here = choice.platform().equals(name) ? choice : new Choice(name, Map.of());
        List<Row> rows = new ArrayList<>();
        for (Axis axis : vehicles.choices().axes()) {
            List<Option> options = new ArrayList<>();
            for (String member : axis.members()) {
                boolean possible = !here.with(axis.name(), Optional.of(member)).of(vehicles, name).isNever();
                options.add(new Option(member, axis.isYesOrNo() ? member.startsWith("not ") ? "without" : "with"
                        : member, possible));
            }
            String chosen = here.members().get(axis.name());
            rows.add(new Row(axis.name(), titles.getOrDefault(axis.name(), axis.name()), options,
                    chosen == null ? -1 : axis.members().indexOf(chosen)));
        }
        String remain = here.isAll() ? VehicleWords.count(vehicles.all()) + " of " + name
                : tally(here, vehicles) + " of " + name + " remain: " + String.join(", ", here.members().values());
        return new VehicleMenu(names, name, rows, remain);
    }

    private static String tally(Choice choice, Vehicles vehicles) {
        try {
            return choice.of(vehicles, choice.platform()).tally();
        } catch (org.loomwright.condition.TooManyCombinations e) {
            return "more vehicles than can be counted";
        }
    }

    /** The platform that most drawings are of. */
    private static String largest(Project project) {
        Map<String, Integer> counts = new HashMap<>();
        project.wirings().values().forEach(wiring -> counts.merge(wiring.platform().name(), 1, Integer::sum));
        return project.platforms().keySet().stream()
                .max(java.util.Comparator.comparingInt(each -> counts.getOrDefault(each, 0))).orElse("");
    }

    private static Map<String, String> titles(Platform platform) {
        Map<String, String> titles = new HashMap<>();
        titles.put("year", "Model year");
        platform.groups().forEach(group -> put(titles, group.name().text(), group.title()));
        platform.options().forEach(option -> put(titles, option.name().text(), option.title()));
        return titles;
    }

    private static void put(Map<String, String> titles, String name, String title) {
        titles.put(name, title.isBlank() ? name : title);
    }
}
