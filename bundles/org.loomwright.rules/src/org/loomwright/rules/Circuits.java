// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;
import java.util.Optional;
import org.loomwright.electric.mode.Mode;
import org.loomwright.electric.survey.Survey;

/**
 * What a check found out about currents and voltages of one set of harnesses.
 *
 * @param survey  what was found; empty where nothing was solved
 * @param tooMany whether nothing was solved because there is too much of it
 */
public record Circuits(Optional<Survey> survey, boolean tooMany) {

    /** There is nothing to solve. */
    public static final Circuits NONE = new Circuits(Optional.empty(), false);

    static final Circuits TOO_MANY = new Circuits(Optional.empty(), true);

    static Circuits of(Survey survey) {
        return new Circuits(Optional.of(survey), false);
    }

    /** Returns whether some vehicles were not looked at in some mode. */
    public boolean isBounded() {
        return tooMany || survey.filter(each -> !each.bounded().isEmpty()).isPresent();
    }

    /** Returns the modes in which some vehicles were not looked at, where others were looked at. */
    public List<Mode> bounded() {
        return survey.map(Survey::bounded).orElse(List.of());
    }
}
