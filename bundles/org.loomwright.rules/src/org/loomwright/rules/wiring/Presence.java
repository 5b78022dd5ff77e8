// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView;

/**
 * The thing at which a wire ends.
 *
 * @param words    what it is, for people: {@code connector J1}
 * @param when     the vehicles that have it
 * @param parts    what part it is, by vehicles; none for a splice or stud
 * @param declared where its name is declared
 */
record Presence(String words, Condition when, List<Case<Part>> parts, Span declared) {

    /** The thing at a spot of a drawing or harness; empty when nothing has that name. */
    static Optional<Presence> of(WiringView view, Node node) {
        return switch (node.kind()) {
            case CAVITY -> Optional.ofNullable(view.connectors().get(node.element()))
                    .map(each -> new Presence("connector " + each.name(), each.when(), each.housings(),
                            each.connector().name().span()));
            case SPLICE -> Optional.ofNullable(view.splices().get(node.element()))
                    .map(each -> new Presence("splice " + node.element(), each.when(), List.of(),
                            each.splice().name().span()));
            case STUD -> Optional.ofNullable(view.studs().get(node.element()))
                    .map(each -> new Presence("stud " + node.element(), each.when(), List.of(),
                            each.stud().name().span()));
            case PIN -> Optional.ofNullable((node.owner().equals(view.name()) ? view.devices()
                    : view.platform().devices()).get(node.element()))
                    .map(each -> new Presence("device " + each.name(), each.when(), each.parts(),
                            each.device().name().span()));
            case NOWHERE -> Optional.empty();
        };
    }
}
