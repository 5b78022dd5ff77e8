// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.List;
import org.loomwright.harness.Measure;
import org.loomwright.quantity.Tolerance;

/** Lengths of a drawing as values: how long, how far to trust it, and what it is measured to. */
final class Measures {

    private Measures() {
    }

    static Value of(Measure measure) {
        StringBuilder key = new StringBuilder(measure.value().map(each -> Value.quantity(each).key()).orElse("?"));
        StringBuilder shown = new StringBuilder(measure.value().map(Object::toString).orElse("unknown"));
        measure.tolerance().ifPresent(each -> {
            key.append('|').append(each);
            shown.append(' ').append(each);
        });
        switch (measure.provenance()) {
            case SHEET, UNKNOWN -> { }
            case SAMPLE, SCALED -> shown.append(' ').append(measure.provenance().words())
                    .append(measure.samples() > 0 ? " of " + measure.samples() : "");
        }
        key.append('|').append(measure.provenance()).append(measure.samples()).append(measure.end());
        if (measure.end() != Measure.MeasuredTo.UNSTATED) {
            shown.append(" measured to ").append(switch (measure.end()) {
                case TIP -> "tip";
                case HOUSING -> "housing";
                case FACE, UNSTATED -> "face";
            });
        }
        key.append(measure.path()).append(measure.pinned());
        shown.append(measure.path() ? " path" : "").append(measure.pinned() ? " pinned" : "");
        return new Value(List.of(new Value.Word(key.toString(), shown.toString())));
    }

    static Value of(Tolerance tolerance) {
        return Value.word(tolerance.toString());
    }
}
