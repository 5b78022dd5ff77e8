// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.coverage;

import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Platform;
import org.loomwright.harness.link.WiringView;
import org.loomwright.rules.Draft;
import org.loomwright.rules.Findings;
import org.loomwright.rules.Rule;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.RuleInfo.Kind;
import org.loomwright.rules.RuleInfo.Scope;
import org.loomwright.rules.Severity;
import org.loomwright.rules.Target;

/** Vehicles for which a position that has drawings has none. */
public final class VehicleWithoutDrawing implements Rule<Target.OfPlatform> {

    private static final RuleInfo INFO = new RuleInfo("vehicle-without-drawing",
            "Does every vehicle have a drawing for each position?", Severity.WARNING, Kind.TRANSCRIPTION,
            Scope.PLATFORM,
            "the meaning of the language: a position is filled by one harness in every vehicle that has it");

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
        Map<String, List<WiringView>> drawings = Positions.drawings(target);
        for (Platform.Position position : target.platform().platform().positions()) {
            List<WiringView> views = drawings.getOrDefault(position.name().text(), List.of());
            if (views.isEmpty()) {
                continue;
            }
            Condition missing = target.platform().vehicles().resolve(position.when()).condition();
            for (WiringView view : views) {
                missing = missing.minus(view.when());
            }
            Draft draft = findings
                    .about(target.platform().name(), position.name().text(), "position " + position.name())
                    .when(missing).at(position.name().span(), "no drawing for some vehicles")
                    .says("position " + position.name() + " has no drawing for these vehicles")
                    .advise("transcribe the drawing that is missing, widen the condition of one that covers them, or"
                            + " give the position the condition of the vehicles that have it");
            views.forEach(view -> draft.see(view.wiring().name().span(), "drawing " + view.name()));
            draft.report();
        }
    }
}
