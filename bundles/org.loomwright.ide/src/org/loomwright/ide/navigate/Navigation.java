// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.navigate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.ide.names.Names.Named;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;

/** Finds what words name and who else names it. Stateless. */
public final class Navigation {

    /** More than these nobody reads through. */
    private static final int MOST = 500;

    private Navigation() {
    }

    /** Where what a word names is declared; several places where a name was given twice. */
    public static List<Target> definition(Moment moment, String file, int offset) {
        Optional<Named> named = moment.names().at(file, offset);
        if (named.isEmpty()) {
            return List.of();
        }
        Symbol symbol = named.get().symbol();
        return moment.names().declared().getOrDefault(symbol, List.of()).stream()
                .map(span -> new Target(symbol, named.get().span(), span)).toList();
    }

    /** All words that name the same thing as a word, in order of file and place. */
    public static List<Occurrence> references(Moment moment, String file, int offset, Cancel cancel) {
        cancel.check();
        return moment.names().at(file, offset).map(named -> occurrences(moment.names().all(named.symbol())))
                .orElse(List.of());
    }

    /** The same within the file. */
    public static List<Occurrence> highlights(Moment moment, String file, int offset) {
        return moment.names().at(file, offset).map(named -> occurrences(moment.names().all(named.symbol(), file)))
                .orElse(List.of());
    }

    private static List<Occurrence> occurrences(List<Named> named) {
        return named.stream().map(each -> new Occurrence(each.span(), each.declares())).toList();
    }

    /**
     * Things of the project whose name holds some letters in that order, whatever their case; the closest first.
     *
     * @param query the letters; empty for everything
     */
    public static List<Target> search(Moment moment, String query, Cancel cancel) {
        String wanted = query.toLowerCase(Locale.ROOT);
        List<Target> found = new ArrayList<>();
        for (Map.Entry<Symbol, List<Span>> each : moment.names().declared().entrySet()) {
            cancel.check();
            Span place = each.getValue().getFirst();
            if (distance(each.getKey().name(), wanted) >= 0 && isOwn(moment, place.file())) {
                found.add(new Target(each.getKey(), Span.NONE, place));
            }
        }
        NaturalOrder order = new NaturalOrder();
        found.sort(Comparator.<Target>comparingInt(target -> distance(target.symbol().name(), wanted))
                .thenComparing(target -> target.symbol().name(), order).thenComparing(Target::name));
        return List.copyOf(found.subList(0, Math.min(MOST, found.size())));
    }

    private static boolean isOwn(Moment moment, String file) {
        return moment.project().stock().stream().noneMatch(source -> source.file().equals(file));
    }

    /** How far apart the letters are in a name, 0 for one that starts with them; -1 where they are not. */
    private static int distance(String name, String wanted) {
        String low = name.toLowerCase(Locale.ROOT);
        if (low.contains(wanted)) {
            return low.indexOf(wanted);
        }
        int at = -1;
        int gaps = 0;
        for (int i = 0; i < wanted.length(); i++) {
            int next = low.indexOf(wanted.charAt(i), at + 1);
            if (next < 0) {
                return -1;
            }
            gaps += next - at - 1;
            at = next;
        }
        return low.length() + gaps;
    }
}
