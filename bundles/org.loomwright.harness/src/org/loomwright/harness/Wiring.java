// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.quantity.Tolerance;

/**
 * A drawing (what the factory made: evidence) or a harness (what we make). Both are described with the same words.
 *
 * @param kind      drawing or harness
 * @param name      its name
 * @param title     words for people
 * @param platform  the platform that it belongs to
 * @param position  the position that it fills; empty when the source gives none
 * @param when      the vehicles that it is for, as written
 * @param sheets    the factory sheets that it was read from
 * @param defaults  what holds for all lengths and wires unless they say otherwise
 * @param datum     the place where the trunk is pinned; empty when the source gives none
 * @param runs      trunks and branches
 * @param connectors its connectors
 * @param studs     ground points
 * @param devices   in-line devices
 * @param circuits  its circuits
 * @param placed    coverings, clips, grommets and other parts at a station
 * @param ours      what only a harness of ours has; {@link Ours#NONE} for a drawing
 * @param span      the whole element
 */
public record Wiring(Kind kind, Name name, String title, Ref platform, Optional<Ref> position, Expression when,
        List<Sheet> sheets, Defaults defaults, Optional<Ref> datum, List<Run> runs, List<Connector> connectors,
        List<Stud> studs, List<Device> devices, List<Circuit> circuits, List<Placed> placed, Ours ours, Span span)
        implements Element {

    /** Evidence or product. */
    public enum Kind {
        DRAWING, HARNESS
    }

    /** A factory sheet. */
    public record Sheet(String number, String issue, Span span) {
    }

    /**
     * What holds unless an element says otherwise.
     *
     * @param tolerance of every length of this drawing or harness
     * @param cable     kind of cable of every wire
     */
    public record Defaults(List<Fact<Tolerance>> tolerance, List<Fact<Ref>> cable) {
    }

    /** A ground point: a stud at a place, bolted to a ground node. */
    public record Stud(Name name, Optional<Ref> place, Optional<Ref> branch, Optional<Ref> ground, Expression when,
            Span span) {
    }

    /**
     * A part with a station.
     *
     * @param name the part's name on this harness
     * @param part the catalogue part
     * @param from where it sits, or starts
     * @param to   where it ends, for a covering
     */
    public record Placed(Name name, Ref part, Location from, Optional<Location> to, Expression when, Span span) {
    }

    /** True for what we make. */
    public boolean isHarness() {
        return kind == Kind.HARNESS;
    }

    /** The trunks and branches of that sort, in source order. */
    public List<Run> runs(Run.Kind wanted) {
        return runs.stream().filter(run -> run.kind() == wanted).toList();
    }
}
