// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.names;

import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.words.Line;

/** Which platform a line is about, so that its conditions are made of the choices of that one. */
public final class PlatformOf {

    private PlatformOf() {
    }

    /**
     * The name of the platform, as the linker finds it: that of the drawing, harness, kit or practice that the line is
     * in, or of what a waiver is about. Empty where none is near, as in a catalogue.
     *
     * @param path the line and the heads of the blocks around it, from the inside out
     */
    public static Optional<String> line(Project project, List<Line> path) {
        for (Line each : path) {
            String name = each.text("name");
            Optional<String> found = switch (each.rule()) {
                case "Platform" -> stated(name);
                case "Drawing", "Harness", "Practice" -> stated(each.text("platform"));
                case "Kit" -> stated(each.text("platform")).or(() -> thing(project, name));
                case "Waiver" -> thing(project, each.text("target"));
                default -> Optional.empty();
            };
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private static Optional<String> stated(String name) {
        return Optional.of(name).filter(text -> !text.isEmpty());
    }

    /** The platform of a drawing, harness, kit or platform. */
    private static Optional<String> thing(Project project, String name) {
        return project.wiring(name).map(view -> view.platform().name())
                .or(() -> Optional.of(name).filter(project.platforms()::containsKey))
                .or(() -> Optional.ofNullable(project.kits().get(name)).flatMap(kit -> ofKit(project, kit)));
    }

    private static Optional<String> ofKit(Project project, Kit kit) {
        return kit.platform().map(Ref::text).or(() -> kit.contents().stream()
                .flatMap(content -> project.wiring(content.item().text()).stream())
                .map(view -> view.platform().name()).findFirst());
    }
}
