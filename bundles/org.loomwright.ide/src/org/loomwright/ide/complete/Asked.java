// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.names.Around;
import org.loomwright.ide.project.Meant;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.Slot;
import org.loomwright.lang.words.Word;
import org.loomwright.lang.words.WordLines;
import org.loomwright.lang.words.WordReader;

/**
 * The place that completion is asked for, and what is around it.
 *
 * @param moment   the project
 * @param file     the file
 * @param expected what could stand there by the grammar
 * @param around   the blocks around it
 * @param wiring   the drawing or harness that it is in, as far as it can be read
 * @param platform the platform that it belongs to
 */
record Asked(Moment moment, String file, WordReader.Expected expected, Around around, Optional<WiringView> wiring,
        Optional<PlatformView> platform) {

    static Asked of(Moment moment, String file, int offset) {
        WordReader.Expected expected = moment.expected(file, offset);
        WordLines lines = moment.words(file);
        List<Line> path = new ArrayList<>();
        path.add(new Line(-1, -1, "", expected.rule(), "", expected.offset(), offset, offset, true,
                expected.before()));
        expected.block().ifPresent(block -> path.addAll(lines.outwards(block)));
        Around around = Around.of(path);
        Optional<WiringView> wiring = moment.project().wiring(around.wiring());
        Optional<PlatformView> platform = Meant.platform(moment, path).or(() -> around.platform().isEmpty()
                ? moment.project().platforms().values().stream().findFirst() : Optional.empty());
        return new Asked(moment, file, expected, around, wiring, platform);
    }

    /** The last word before the place that is that property; empty for none. */
    Optional<Word> before(String property) {
        List<Word> words = expected.before();
        for (int i = words.size() - 1; i >= 0; i--) {
            if (words.get(i).slot().is(property)) {
                return Optional.of(words.get(i));
            }
        }
        return Optional.empty();
    }

    /** The text of that word; empty for none. */
    String textBefore(String property) {
        return before(property).map(Word::text).orElse("");
    }

    /** Whether something of that sort could stand here. */
    Optional<Slot> slot(String target) {
        return expected.slots().stream().filter(slot -> slot.target().equals(target)).findFirst();
    }

    /** The wire that the line is, or is part of, as it could last be read. */
    Optional<WireView> wire() {
        return wiring.stream().flatMap(view -> view.wires().stream())
                .filter(wire -> wire.circuit().name().text().equals(around.circuit())
                        && wire.wire().name().text().equals(around.wire())).findFirst();
    }

    /** The vehicles that the line is about, as far as that is known; empty without a platform. */
    Optional<Condition> vehicles() {
        Optional<Condition> of = wire().map(WireView::when).or(this::circuit)
                .or(() -> wiring.map(WiringView::when));
        return of.or(() -> platform.map(view -> view.vehicles().all()));
    }

    /** The vehicles of the circuit that the line is in, as it could last be read. */
    Optional<Condition> circuit() {
        return wiring.stream().flatMap(view -> view.circuits().stream())
                .filter(circuit -> circuit.circuit().name().text().equals(around.circuit()))
                .map(WiringView.CircuitView::when).findFirst();
    }

    /** Whether something that some vehicles have can be there in those that the line is about. */
    boolean meets(Condition when) {
        return vehicles().map(here -> here.vehicles() != when.vehicles() || !here.excludes(when)).orElse(true);
    }
}
