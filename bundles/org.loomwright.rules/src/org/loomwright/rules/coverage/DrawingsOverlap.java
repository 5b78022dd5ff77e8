// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.coverage;

import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** Two drawings of one position for the same vehicle. */
public final class DrawingsOverlap implements Rule<Target.OfPlatform> {

    private static final RuleInfo INFO = new RuleInfo("drawings-overlap",
            "Does every vehicle have only one drawing for a position?", Severity.ERROR, Kind.TRANSCRIPTION,
            Scope.PLATFORM,
            "the meaning of the language: drawings that fill the same position are alternatives");

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public Class<Target.OfPlatform> target() {
        return Target.OfPlatform.class;
    }

    @Override
    public void check(Target.OfPlatform target, Findings findings) {
        Positions.drawings(target).forEach((position, views) -> {
            for (int later = 1; later < views.size(); later++) {
                overlap(position, views.subList(0, later), views.get(later), findings);
            }
        });
    }

    private static void overlap(String position, List<WiringView> earlier, WiringView view, Findings findings) {
        for (WiringView before : earlier) {
            Condition both = before.when().and(view.when());
            Draft draft = findings.about(view.name(), "", "drawing " + view.name()).when(both).key(before.name())
                    .at(view.wiring().name().span(), "fills " + position + " too")
                    .see(before.wiring().name().span(), "fills " + position)
                    .says("drawings " + before.name() + " and " + view.name() + " both fill position " + position)
                    .advise("narrow the condition of one of them");
            draft.report();
        }
    }
}
