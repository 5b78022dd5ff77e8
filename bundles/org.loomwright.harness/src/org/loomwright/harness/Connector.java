// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;

/**
 * A connector at the end of a branch, at the end of a trunk or at the datum.
 *
 * @param name     its name
 * @param title    words for people
 * @param place    the place where it is; empty when a branch is given
 * @param branch   the branch at whose end it is; empty when the place tells
 * @param housing  its catalogue housing
 * @param mates    what it plugs into
 * @param cavities what a cavity holds besides wires, and which cavity of the mate it meets
 * @param covers   the drawings whose vehicles it is for, when that is narrower than the harness
 * @param when     the vehicles that have it
 * @param span     the whole element
 */
public record Connector(Name name, String title, Optional<Ref> place, Optional<Ref> branch, List<Fact<Ref>> housing,
        List<Fact<Ref>> mates, List<CavityFact> cavities, List<Ref> covers, Expression when, Span span) {

    /** What is stated of a cavity. */
    public enum CavityKind {
        /** {@code map 7 to 3}: meets another cavity of the mate than the one of its own name. */
        MAP,
        /** {@code terminal 7 is ring5}. */
        TERMINAL,
        /** {@code seal 7 is greySeal}. */
        SEAL,
        /** {@code plug 9 is blindPlug}. */
        PLUG
    }

    /** One fact of one cavity; {@code value} is a cavity of the mate or a catalogue part. */
    public record CavityFact(CavityKind kind, Name cavity, Ref value, Expression when, Span span) {
    }
}
