// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.navigate;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.link.WireView;
import org.loomwright.ide.names.Names.Named;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.names.Symbol.Kind;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;

/** Gives a thing another name wherever it is named, in all files of the project. Stateless. */
public final class Rename {

    private static final Pattern NAME = Pattern.compile(
            "[A-Za-z_\\u00c0-\\u024f][A-Za-z0-9_\\u00c0-\\u024f]*|[0-9]+[A-Za-z0-9_]*");
    /** Words that hold lines together and can name nothing. */
    private static final Set<String> RESERVED = Set.of("from", "to", "at", "on", "in", "of", "is", "when", "and", "or",
            "not", "by", "for", "mates", "via", "while", "as", "because", "until");
    /** Where wires can end: these share their names within a drawing or harness. */
    private static final Set<Kind> ENDS = EnumSet.of(Kind.CONNECTOR, Kind.STUD, Kind.SPLICE, Kind.DEVICE);
    private static final Set<Kind> POINTS = EnumSet.of(Kind.RUN, Kind.BREAKOUT);
    private static final Set<Kind> WIRINGS = EnumSet.of(Kind.DRAWING, Kind.HARNESS);
    private static final Set<Kind> CHOICES = EnumSet.of(Kind.CHOICE, Kind.AXIS);
    private static final Set<Kind> FIXED = EnumSet.of(Kind.RULE, Kind.LIMIT, Kind.PIN, Kind.STATE);

    private Rename() {
    }

    /**
     * What came of it.
     *
     * @param edits   the changes, in order of file and place; none when it is refused
     * @param refusal why not, one line; else empty
     */
    public record Renamed(List<TextEdit> edits, String refusal) {

        public Renamed {
            edits = List.copyOf(edits);
        }

        static Renamed refused(String why) {
            return new Renamed(List.of(), why);
        }
    }

    /** The word that would be renamed; empty where there is nothing that can be. */
    public static Optional<Span> prepare(Moment moment, String file, int offset) {
        return moment.names().at(file, offset).filter(named -> why(moment, named.symbol()).isEmpty())
                .map(Named::span);
    }

    /** Why a thing cannot be renamed; empty where it can. */
    private static String why(Moment moment, Symbol symbol) {
        if (FIXED.contains(symbol.kind()) || symbol.kind() == Kind.AXIS && symbol.name().equals("year")) {
            return "a " + symbol.kind().words() + " cannot be renamed here";
        }
        List<Span> places = moment.names().declared().getOrDefault(symbol, List.of());
        if (places.isEmpty()) {
            return "nothing gives the name " + symbol.name();
        }
        boolean own = places.stream().allMatch(place -> moment.project().sources().stream()
                .anyMatch(source -> source.file().equals(place.file())));
        return own ? "" : symbol.name() + " is a part of the stock; it keeps its name";
    }

    /** Renames what the word at a place names. */
    public static Renamed rename(Moment moment, String file, int offset, String to, Cancel cancel) {
        Optional<Named> at = moment.names().at(file, offset);
        if (at.isEmpty()) {
            return Renamed.refused("there is no name here");
        }
        Symbol symbol = at.get().symbol();
        String why = why(moment, symbol);
        if (!why.isEmpty()) {
            return Renamed.refused(why);
        }
        if (to.equals(symbol.name())) {
            return new Renamed(List.of(), "");
        }
        if (!NAME.matcher(to).matches() || RESERVED.contains(to)) {
            return Renamed.refused("\"" + to + "\" cannot be a name; a name is letters, digits and _");
        }
        Optional<Symbol> taken = taken(moment, symbol, to);
        if (taken.isPresent()) {
            Span place = moment.names().declared().get(taken.get()).getFirst();
            return Renamed.refused("the name " + to + " is taken by the " + taken.get().words() + " at " + place.at());
        }
        List<TextEdit> edits = new ArrayList<>();
        for (Named each : moment.names().all(symbol)) {
            cancel.check();
            edits.add(new TextEdit(each.span(), each.word().text().equals(symbol.name()) ? to : label(symbol, to)));
        }
        if (symbol.kind() == Kind.CIRCUIT) {
            labels(moment, symbol, to, edits);
        }
        return new Renamed(edits, "");
    }

    /** A waiver names a wire by circuit and wire together. */
    private static String label(Symbol wire, String to) {
        return WireView.label(wire.owner().substring(wire.owner().indexOf('/') + 1), to);
    }

    /** The waivers of the wires of a circuit that gets another name. */
    private static void labels(Moment moment, Symbol circuit, String to, List<TextEdit> edits) {
        String owner = circuit.owner() + "/" + circuit.name();
        moment.names().declared().keySet().stream()
                .filter(each -> each.kind() == Kind.WIRE && each.owner().equals(owner))
                .forEach(wire -> moment.names().all(wire).stream()
                        .filter(named -> named.word().slot().target().equals("WaivedElement"))
                        .forEach(named -> edits.add(new TextEdit(named.span(), WireView.label(to, wire.name())))));
    }

    /** Who has a name already where the renamed thing would be looked for. */
    private static Optional<Symbol> taken(Moment moment, Symbol symbol, String to) {
        Set<Kind> rivals = ENDS.contains(symbol.kind()) ? ENDS : POINTS.contains(symbol.kind()) ? POINTS
                : WIRINGS.contains(symbol.kind()) ? WIRINGS : CHOICES.contains(symbol.kind()) ? CHOICES
                : EnumSet.of(symbol.kind());
        return rivals.stream().map(kind -> new Symbol(kind, symbol.owner(), to))
                .filter(moment.names().declared()::containsKey).findFirst()
                .or(() -> hidden(moment, symbol, to));
    }

    /** A device of the platform whose name a thing of one of its drawings would hide, or the other way about. */
    private static Optional<Symbol> hidden(Moment moment, Symbol symbol, String to) {
        if (!ENDS.contains(symbol.kind())) {
            return Optional.empty();
        }
        return moment.project().wiring(symbol.owner()).map(view -> new Symbol(Kind.DEVICE, view.platform().name(), to))
                .filter(moment.names().declared()::containsKey)
                .or(() -> moment.project().wirings().values().stream()
                        .filter(view -> view.platform().name().equals(symbol.owner()))
                        .flatMap(view -> ENDS.stream().map(kind -> new Symbol(kind, view.name(), to)))
                        .filter(moment.names().declared()::containsKey).findFirst());
    }
}
