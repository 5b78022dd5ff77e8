// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.quantity.Quantity;

/**
 * A family of vehicles that share a shell and most of their wiring.
 *
 * @param name        the platform's name
 * @param title       words for people
 * @param supply      system voltage and polarity; empty when the source gives none
 * @param years       model years; empty when the source gives none
 * @param breaks      changes within a model year, in order
 * @param groups      choices of which a vehicle has exactly one
 * @param options     what the factory could add, and what an owner adds later
 * @param constraints what cannot exist
 * @param zones       regions with one ambient temperature
 * @param places      named spots
 * @param positions   spots that are filled by one harness, the factory's or ours
 * @param grounds     ground nodes
 * @param straps      named joints between ground nodes
 * @param devices     what the vehicle carries on its own
 * @param modes       switch positions and engine states
 * @param span        the whole element
 */
public record Platform(Name name, String title, Optional<Supply> supply, Optional<Years> years, List<Break> breaks,
        List<Group> groups, List<Option> options, List<Constraint> constraints, List<Zone> zones, List<Place> places,
        List<Position> positions, List<GroundNode> grounds, List<Strap> straps, List<Device> devices, List<Mode> modes,
        Span span) implements Element {

    /** System voltage and which pole is grounded. */
    public record Supply(Quantity voltage, boolean negativeGround, Span span) {
    }

    /** The model years, first and last included. */
    public record Years(int first, int last, Span span) {
    }

    /** A change within a model year, such as {@code from car 12345}. */
    public record Break(Name name, int year, String title, Span span) {
    }

    /** A choice of which a vehicle has exactly one member. */
    public record Group(Name name, String title, List<Member> members, Span span) {
    }

    /** One member of a group. */
    public record Member(Name name, String title) {
    }

    /** A factory option, or an upgrade that an owner adds later. */
    public record Option(Name name, String title, boolean upgrade, Span span) {
    }

    /**
     * A rule about which vehicles exist.
     *
     * @param name   the constraint's name, may be absent
     * @param never  for {@code never X}: what cannot exist; for {@code require X when Y}: the condition Y
     * @param needed for {@code require X when Y}: X; empty for {@code never}
     * @param span   the whole line
     */
    public record Constraint(Name name, Expression never, Optional<Expression> needed, Span span) {
    }

    /** A region with one ambient temperature. */
    public record Zone(Name name, String title, Optional<Quantity> ambient, boolean wet, Span span) {
    }

    /** A named spot in the vehicle. */
    public record Place(Name name, String title, Optional<Ref> zone, Expression when, Span span) {
    }

    /** A spot that one harness fills; drawings that fill the same position are alternatives. */
    public record Position(Name name, String title, Expression when, Span span) {
    }

    /** A ground node: body, engine, frame, column; {@code none} for a shell that conducts nothing. */
    public record GroundNode(Name name, String title, boolean none, Span span) {
    }

    /** A joint between two ground nodes; its resistance is never zero. */
    public record Strap(Name name, Ref from, Ref to, Optional<Quantity> resistance, Expression when, Span span) {
    }

    /** A set of switch positions and engine state. */
    public record Mode(Name name, String title, Optional<Ref> parent, List<Setting> settings, Span span) {
    }

    /** In a mode: what state a device, or the engine, is in. */
    public record Setting(Ref subject, String state, Span span) {
    }
}
