// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.WordKind;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.lang.words.Slot;

/** Words about parts: those that rules know, and those that other parts of the project and the stock have. */
final class WordOffers {

    private static final Pattern ONE_WORD = Pattern.compile("[A-Za-z_][A-Za-z0-9_]*");

    private WordOffers() {
    }

    static void add(Slot slot, Asked asked, Offers offers) {
        if (!slot.property().equals("WordFact.value")) {
            return;
        }
        String first = asked.expected().before().getFirst().text();
        switch (first) {
            case "gender" -> List.of("tab", "socket").forEach(word -> offers.add(Kind.OTHER, word, "", "", 0));
            case "basis" -> List.of("continuous", "blow").forEach(word -> offers.add(Kind.OTHER, word, "", "", 0));
            case "polarity" -> asked.moment().part(asked.around().part()).ifPresent(part -> part.pins().forEach(pin ->
                    offers.add(Kind.CAVITY, pin.name().text(), pin.title(), "", 0)));
            case "family", "keying", "type" -> inUse(asked, WordKind.valueOf(first.toUpperCase(Locale.ROOT)), offers);
            default -> { }
        }
    }

    /** Those of the same kind of part first. */
    private static void inUse(Asked asked, WordKind kind, Offers offers) {
        String sort = asked.moment().part(asked.around().part()).map(part -> part.kind().word()).orElse("");
        Set<String> alike = new TreeSet<>();
        Set<String> others = new TreeSet<>();
        asked.moment().project().parts().values().forEach(part -> words(part, kind,
                part.kind().word().equals(sort) ? alike : others));
        asked.moment().stock().heads().stream().filter(head -> head.kind().equals(sort))
                .forEach(head -> asked.moment().stock().part(head.name()).ifPresent(part -> words(part, kind, alike)));
        alike.forEach(word -> offers.add(Kind.OTHER, word, kind.word() + " of a " + sort, "", 0));
        others.forEach(word -> offers.add(Kind.OTHER, word, kind.word() + " of other parts", "", 1));
    }

    private static void words(Part part, WordKind kind, Set<String> into) {
        part.words().stream().map(Fact::value).filter(word -> word.kind() == kind)
                .map(Part.Word::text).filter(text -> ONE_WORD.matcher(text).matches()).forEach(into::add);
    }
}
