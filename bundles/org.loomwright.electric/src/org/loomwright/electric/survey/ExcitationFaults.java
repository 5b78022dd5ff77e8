// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.survey;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.electric.ampacity.Figure;
import org.loomwright.electric.mode.Engine;
import org.loomwright.electric.network.Gate;
import org.loomwright.electric.network.Model;
import org.loomwright.electric.network.Piece;
import org.loomwright.electric.network.Role;
import org.loomwright.electric.point.OperatingPoint;
import org.loomwright.electric.thermal.Ratings;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Part;

/**
 * Looks at the fields of machines: an alternator wants some current through its charge lamp while it stands and the
 * key is on, a field that is fed from outside wants its current when the machine charges.
 */
public final class ExcitationFaults implements Inspector {

    private static final String KEY_ON = "keyOn";
    private static final String RULE = "no-excitation";

    @Override
    public List<Fault> inspect(OperatingPoint point, Fed fed, Ratings ratings) {
        List<Fault> faults = new ArrayList<>();
        boolean stands = point.mode().name().equals(KEY_ON) && point.mode().engine() == Engine.STOPPED
                && !point.mode().states().isEmpty();
        boolean charges = point.mode().engine() == Engine.CRUISE && point.mode().written();
        for (Piece piece : point.solved() ? point.schematic().pieces() : List.<Piece>of()) {
            if (point.conducts(piece) && piece.role() == Role.INSIDE && piece.model() instanceof Model.Fixed) {
                boolean alternator = isMachine(piece, "alternator");
                if (stands && alternator && piece.gate() instanceof Gate.Turning) {
                    standing(point, piece, faults);
                } else if (charges && piece.gate().equals(Gate.ALWAYS)
                        && (alternator || isMachine(piece, "generator"))) {
                    charging(point, piece, faults);
                }
            }
        }
        return faults;
    }

    private static boolean isMachine(Piece piece, String type) {
        return piece.subject().part().filter(part -> part.kind() == Part.Kind.SOURCE)
                .flatMap(part -> part.word(Part.WordKind.TYPE)).filter(type::equals).isPresent();
    }

    private static void standing(OperatingPoint point, Piece field, List<Fault> faults) {
        Limits limits = point.schematic().fitment().platform().limits();
        double least = limits.si(Limit.EXCITATION);
        double amps = Math.abs(point.amps(field));
        if (amps < least) {
            faults.add(new Fault(RULE, field, 1 - amps / least, field.subject().label() + " gets "
                    + Figure.of(1000 * amps, 0) + " mA while the key is on and the engine stands; "
                    + limits.value(Limit.EXCITATION) + " are wanted for the machine to begin to charge", List.of(
                            "at least " + limits.value(Limit.EXCITATION) + " through the charge lamp ("
                                    + limits.cite(Limit.EXCITATION) + ")"),
                    "lead the charge lamp there from the key, a filament lamp of 2 W or more, or set a resistor beside"
                            + " an LED"));
        }
    }

    private static void charging(OperatingPoint point, Piece field, List<Fault> faults) {
        double amps = Math.abs(point.amps(field));
        if (amps < point.schematic().fitment().platform().limits().si(Limit.EXCITATION)) {
            faults.add(new Fault(RULE, field, 1, field.subject().label() + " gets " + Figure.of(1000 * amps, 0)
                    + " mA while the machine turns: it gives nothing", List.of("its field takes its current from"
                            + " outside"), "lead the field to the regulator"));
        }
    }
}
