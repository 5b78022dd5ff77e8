// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.List;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.Figure;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.SizeSystem;

/**
 * Whether a part can take a wire at all, for proposals: what states no range takes everything. The rule
 * {@code terminal-does-not-take-wire} judges exactly, by vehicles.
 */
final class Takes {

    private static final double MM2 = 1e6;
    private static final double MM = 1e3;

    private Takes() {
    }

    /** Whether a terminal takes a conductor; a gauge size may be off by the usual margin. */
    static boolean section(Part terminal, ConductorSize size) {
        double margin = size.system() == SizeSystem.METRIC ? 0 : Limit.GAUGE_MARGIN.usual().si();
        double area = size.areaMm2();
        return within(terminal, FigureKind.TAKES, Dimension.AREA, MM2, area * (1 - margin), area * (1 + margin));
    }

    /** Whether a seal fits round the insulation of a wire, as far as its cable states a thickness. */
    static boolean insulation(Part seal, FigureKind kind, WireView wire) {
        return wire.cables().stream().allMatch(cable -> cable.value().sizes().stream()
                .filter(row -> wire.sizes().stream().anyMatch(size -> size.value().equals(row.size())))
                .flatMap(row -> row.diameter().stream())
                .allMatch(diameter -> within(seal, kind, Dimension.LENGTH, MM, diameter.si() * MM,
                        diameter.si() * MM)));
    }

    private static boolean within(Part part, FigureKind kind, Dimension dimension, double scale, double least,
            double most) {
        List<Figure> stated = part.figures().stream().map(Fact::value).filter(figure -> figure.kind() == kind
                && figure.from().unit().dimension() == dimension).toList();
        return stated.isEmpty() || stated.stream().anyMatch(figure -> {
            double from = figure.from().si() * scale;
            double upTo = figure.upTo().map(each -> each.si() * scale).orElse(from);
            double low = figure.upTo().isPresent() ? Math.min(from, upTo) : 0;
            return most >= low && least <= Math.max(from, upTo);
        });
    }
}
