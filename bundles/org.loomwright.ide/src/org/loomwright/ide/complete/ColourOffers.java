// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.Map;
import java.util.TreeMap;
import org.loomwright.harness.Part;
import org.loomwright.harness.link.Colours;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.lang.words.Slot;

/** The colour codes of the standard and of the project; those in use in the drawing first. */
final class ColourOffers {

    private ColourOffers() {
    }

    static void add(Slot slot, Asked asked, Offers offers) {
        Map<String, Integer> used = new TreeMap<>();
        asked.wiring().ifPresent(view -> view.wiring().circuits().forEach(circuit -> circuit.colours().forEach(fact -> {
            used.merge(fact.value().base(), 1, Integer::sum);
            used.merge(fact.value().tracer(), 1, Integer::sum);
        })));
        Map<String, Part> parts = asked.moment().project().parts();
        for (String code : Colours.known(parts.values())) {
            Part part = parts.get(code);
            String called = part == null ? Colours.nameOf(code) : part.word(Part.WordKind.CALLED).orElse(part.title());
            offers.add(Kind.COLOUR, code, called, "", used.containsKey(code) ? 1 : 2);
        }
    }
}
