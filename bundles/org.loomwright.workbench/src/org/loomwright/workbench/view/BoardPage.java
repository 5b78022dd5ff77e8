// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.sheets.SheetChoice;
import org.loomwright.sheets.compose.BoardPicture;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.workbench.focus.Choice;

/**
 * The formboard of a harness, as it is printed, and where its trunks and branches are stated.
 *
 * @param names   the harnesses that can be shown
 * @param name    the one that is shown; empty for none
 * @param picture its board; empty when no chosen vehicle has it
 * @param spans   where trunks and branches are stated, by name
 * @param words   what is shown
 */
record BoardPage(List<String> names, String name, Optional<BoardPicture> picture, Map<String, Span> spans,
        String words) {

    static BoardPage of(Project project, String wanted, Choice choice) {
        List<String> names = project.harnesses().stream().filter(each -> !each.wiring().runs().isEmpty())
                .map(WiringView::name).toList();
        String name = names.contains(wanted) ? wanted : names.stream().findFirst().orElse("");
        if (name.isEmpty()) {
            return new BoardPage(names, "", Optional.empty(), Map.of(), "No harness of this project has a trunk.");
        }
        WiringView view = project.wiring(name).orElseThrow();
        Condition vehicles = view.when().and(choice.of(view.platform().vehicles(), view.platform().name()));
        if (vehicles.isNever()) {
            return new BoardPage(names, name, Optional.empty(), Map.of(), name + " is in none of the chosen vehicles: "
                    + choice.words() + ".");
        }
        SheetChoice.Size size = SheetChoice.USUAL_BOARD;
        BoardPicture picture = BoardPicture.of(LaidHarness.of(view, project.parts(), vehicles), size.width(),
                size.height());
        Map<String, Span> spans = new LinkedHashMap<>();
        picture.paths().keySet().forEach(each -> view.run(each).ifPresent(run -> spans.put(each, run.span())));
        return new BoardPage(names, name, Optional.of(picture), spans, name + (picture.fits() ? " fits a board of "
                : " needs a larger board than ") + Math.round(size.width()) + " x " + Math.round(size.height())
                + " mm, for " + choice.words() + ". Drawn is one of " + Math.round(picture.drawing().width()) + " x "
                + Math.round(picture.drawing().height()) + " mm. + and - zoom, 0 shows all, arrow keys move it, Page"
                + " Up and Page Down go from branch to branch, Enter or a click opens the line.");
    }
}
