// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.quantity.ConductorSize;

/** Facts of parts as a source writes them, and the figures that follow from a wire size. */
final class PartWords {

    private static final MathContext THREE = new MathContext(3, RoundingMode.HALF_UP);

    private PartWords() {
    }

    static String pins(Part part) {
        return part.pins().stream().map(pin -> pin.name() + (pin.title().isEmpty() ? "" : " \"" + pin.title() + "\""))
                .collect(Collectors.joining(", "));
    }

    static String names(List<Name> names) {
        return names.stream().map(Name::text).collect(Collectors.joining(", "));
    }

    static String join(Part.Join join) {
        return join.from() + " to " + join.to() + join.through().map(through -> " through " + through).orElse("")
                + (join.states().isEmpty() ? "" : " while " + names(join.states()));
    }

    /** Section in mm², three figures. */
    static String area(ConductorSize size) {
        return new BigDecimal(three(size.areaMm2())).stripTrailingZeros().toPlainString();
    }

    /** Resistance of copper at 20 C in mohm / m, three figures. */
    static String milliohms(ConductorSize size) {
        return three(size.ohmPerMetre20() * 1000);
    }

    private static String three(double value) {
        return new BigDecimal(value).round(THREE).toPlainString();
    }
}
