// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.ide.complete.Proposal.Kind;

/** Collects proposals: those that begin with what is written already, each text once. */
final class Offers {

    private final String prefix;
    private final Span where;
    private final Map<String, Proposal> found = new LinkedHashMap<>();

    Offers(String prefix, Span where) {
        this.prefix = prefix.toLowerCase(Locale.ROOT);
        this.where = where;
    }

    void add(Kind kind, String text, String detail, String more, int rank) {
        if (!text.isEmpty() && fits(text)) {
            Proposal next = new Proposal(kind, text, detail, more, where, rank);
            found.merge(text, next, (one, other) -> one.rank() <= other.rank() ? one : other);
        }
    }

    /** Begins with it, or has it where a word within the name begins: {@code lamp} finds {@code headLampL}. */
    private boolean fits(String text) {
        String low = text.toLowerCase(Locale.ROOT);
        int at = low.indexOf(prefix);
        while (at > 0) {
            if (Character.isUpperCase(text.charAt(at)) || !Character.isLetterOrDigit(text.charAt(at - 1))
                    || Character.isDigit(text.charAt(at)) != Character.isDigit(text.charAt(at - 1))) {
                return true;
            }
            at = low.indexOf(prefix, at + 1);
        }
        return at == 0;
    }

    /** The proposals, best first: what begins as it is written before what has it within. */
    List<Proposal> sorted() {
        Comparator<Proposal> begins = Comparator.comparing(each -> !each.text().toLowerCase(Locale.ROOT)
                .startsWith(prefix));
        return found.values().stream().sorted(begins.thenComparingInt(Proposal::rank)
                .thenComparing(Proposal::text, new NaturalOrder())).toList();
    }
}
