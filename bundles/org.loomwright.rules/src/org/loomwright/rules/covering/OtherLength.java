// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.covering;

import java.util.Optional;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Run;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Unit;
import org.loomwright.rules.Draft;

/**
 * Offers another length for a branch of ours, in whole steps of 5 mm. It is always a guess: what one drawing needs may
 * be too much for another.
 */
final class OtherLength {

    private static final Length STEP = new Length(5_000_000);

    private OtherLength() {
    }

    /** Offers the next length that is greater by at least so much. */
    static void longer(Draft draft, WiringView harness, String branch, Length by) {
        stated(harness, branch).ifPresent(measure -> offer(draft, branch, measure,
                measure.length().orElseThrow().plus(by).roundedUpTo(STEP)));
    }

    /** Offers the next length that is smaller by at least so much, if that leaves any. */
    static void shorter(Draft draft, WiringView harness, String branch, Length by) {
        stated(harness, branch).ifPresent(measure -> {
            Length most = measure.length().orElseThrow().minus(by);
            Length next = most.roundedUpTo(STEP).equals(most) ? most : most.roundedUpTo(STEP).minus(STEP);
            if (!next.isNegative() && !next.isZero()) {
                offer(draft, branch, measure, next);
            }
        });
    }

    /** The length of a branch where a number of millimetres stands there and nothing else. */
    private static Optional<Measure> stated(WiringView harness, String branch) {
        return harness.run(branch).flatMap(Run::length)
                .filter(each -> each.value().filter(value -> value.unit() == Unit.MM
                        && value.toString().length() == each.span().length()).isPresent());
    }

    private static void offer(Draft draft, String branch, Measure measure, Length length) {
        draft.guess("make " + branch + " " + length, new TextEdit(measure.span(), length.toString()));
    }
}
