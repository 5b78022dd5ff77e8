// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.parts;

import java.util.ArrayList;
import java.util.List;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.WireEnd;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Part;
import org.loomwright.rules.Target;

/**
 * A terminal, seal or plug that is stated for a cavity.
 *
 * @param fact where it is stated
 * @param part the catalogue part
 * @param when the vehicles in which it is there
 */
record FittedPart(Connector.CavityFact fact, Part part, Condition when) {

    /** What a connector states of its cavities, in source order; parts that no catalogue has are left out. */
    static List<FittedPart> of(Target.OfHousing target, Connector.CavityKind kind) {
        List<FittedPart> fitted = new ArrayList<>();
        for (Connector.CavityFact fact : target.connector().connector().cavities()) {
            Part part = fact.kind() == kind ? target.parts().get(fact.value().text()) : null;
            if (part != null) {
                Condition when = when(target, fact);
                if (!when.isNever()) {
                    fitted.add(new FittedPart(fact, part, when));
                }
            }
        }
        return fitted;
    }

    /** The vehicles of a fact of a cavity. */
    static Condition when(Target.OfHousing target, Connector.CavityFact fact) {
        return target.wiring().platform().vehicles().resolve(fact.when()).condition().and(target.connector().when());
    }

    /** The wire ends in a cavity of a connector. */
    static List<WireEnd> ends(Target.OfHousing target, String cavity) {
        return target.ends().stream().filter(end -> end.node().pin().equals(cavity)).toList();
    }

    /** Its name for people: {@code J1:7}. */
    String label(Target.OfHousing target) {
        return target.connector().name() + ":" + fact.cavity();
    }
}
