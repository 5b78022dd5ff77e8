// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.coverage;

import org.loomwright.condition.Meetings;
import org.loomwright.harness.link.WiringView;
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
            for (int[] pair : Meetings.pairs(views.stream().map(WiringView::when).toList())) {
                overlap(position, views.get(pair[0]), views.get(pair[1]), findings);
            }
        });
    }

    private static void overlap(String position, WiringView before, WiringView view, Findings findings) {
        findings.about(view.name(), "", "drawing " + view.name()).when(before.when().and(view.when()))
                .key(before.name())
                .at(view.wiring().name().span(), "fills " + position + " too")
                .see(before.wiring().name().span(), "fills " + position)
                .says("drawings " + before.name() + " and " + view.name() + " both fill position " + position)
                .advise("narrow the condition of one of them")
                .report();
    }
}
