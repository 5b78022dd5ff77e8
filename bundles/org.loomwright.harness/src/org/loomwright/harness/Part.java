// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Quantity;

/**
 * A catalogue part. As a source states it, it may be like another part and hold only what differs; joined to a project
 * it holds everything.
 *
 * @param kind    what sort of part
 * @param name    its name
 * @param title   words for people
 * @param base    the part that it is like
 * @param figures quantities: rating, diameter ...
 * @param words   words: family, basis, gender ...
 * @param sizes   for a cable: the sizes it is made in
 * @param pins    pins or cavities, in order; ranges are already written out
 * @param joins   internal connections
 * @param states  for a switch or a latching relay: its states, the first one is the state at rest
 * @param span    the whole part
 */
public record Part(Kind kind, Name name, String title, Optional<Ref> base, List<Fact<Figure>> figures,
        List<Fact<Word>> words, List<Size> sizes, List<Pin> pins, List<Join> joins, List<Name> states, Span span) {

    /** A part that is not like another. */
    public Part(Kind kind, Name name, String title, List<Fact<Figure>> figures, List<Fact<Word>> words,
            List<Size> sizes, List<Pin> pins, List<Join> joins, List<Name> states, Span span) {
        this(kind, name, title, Optional.empty(), figures, words, sizes, pins, joins, states, span);
    }

    /** That of the name: parts are told apart by it. */
    @Override
    public int hashCode() {
        return name.text().hashCode();
    }

    /** Sorts of parts. */
    public enum Kind {
        CABLE, FUSIBLE_LINK, RESISTOR_CABLE, TERMINAL, SEAL, PLUG, HOUSING, COVERING, OPENING, SPLICE_METHOD, CLIP,
        FUSE, BREAKER, RELAY, FLASHER, LAMP, MOTOR, LOAD, SWITCH, SOURCE, ASSEMBLY, COLOUR;

        /** The word that a source has for it: {@code fusibleLink}. */
        public String word() {
            return inOneWord(this);
        }
    }

    /** What a figure states. */
    public enum FigureKind {
        /** Rated current of a fuse, breaker, contact or terminal. */
        RATING,
        /** Design voltage. */
        VOLTAGE,
        /** Power at the design voltage. */
        POWER,
        /** Current at the design voltage, in use. */
        CURRENT,
        /** Current at start. */
        START,
        /** Current when stalled. */
        STALL,
        /** Resistance of a contact, coil, resistor cable or source. */
        RESISTANCE,
        /** Greatest temperature of insulation or part. */
        TEMPERATURE,
        /** Short-time temperature limit of insulation. */
        SHORT_TIME,
        /** Outside diameter. */
        DIAMETER,
        /** Bore of an opening. */
        BORE,
        /** Wall thickness of a covering. */
        THICKNESS,
        /** Mass, per piece or per metre. */
        MASS,
        /** Conductor sections that a terminal takes. */
        TAKES,
        /** Outside diameters that a seal or clip takes. */
        FITS,
        /** Strip length. */
        STRIP,
        /** Crimp height. */
        HEIGHT,
        /** Least pull force of a crimp. */
        PULL,
        /** Length of a part, a link or an allowance. */
        LENGTH,
        /** Least bend radius. */
        RADIUS,
        /** Pull-in voltage. */
        PULL_IN,
        /** Drop-out voltage. */
        DROP_OUT,
        /** Breaking capacity. */
        BREAKING;

        /** The word that a source has for it: {@code shortTime}. */
        public String word() {
            return inOneWord(this);
        }
    }

    /** What a source says of a figure that nobody has looked up. */
    private static final String FROM_MEMORY = "from memory";

    /** Whether a figure with that source has not been looked up; it is shown, and never decides alone. */
    public static boolean fromMemory(String source) {
        return source.toLowerCase(Locale.ROOT).contains(FROM_MEMORY);
    }

    /** A quantity, or a range of it, with where the figure comes from. */
    public record Figure(FigureKind kind, Quantity from, Optional<Quantity> upTo, String basis) {
    }

    /** What a word states. */
    public enum WordKind {
        /** Family of a fuse, relay, terminal or housing. */
        FAMILY,
        /** Whether a fuse rating is {@code continuous} or {@code blow}. */
        BASIS,
        /** {@code tab} or {@code socket}. */
        GENDER,
        /** Keying of a housing. */
        KEYING,
        /** Sort within the kind: {@code thermal}, {@code electronic}, {@code selfResetting}, {@code battery} ... */
        TYPE,
        /** The pin that must see the insulated pole. */
        POLARITY,
        /** Name of the colour. */
        CALLED,
        /** Where the part's figures come from. */
        SOURCE,
        /** A remark. */
        NOTE;

        /** The word that a source has for it: {@code figuresFrom}. */
        public String word() {
            return this == SOURCE ? "figuresFrom" : inOneWord(this);
        }
    }

    /** A word with its meaning. */
    public record Word(WordKind kind, String text) {
    }

    /** One size that a cable is made in. */
    public record Size(ConductorSize size, Optional<Quantity> diameter, Optional<Quantity> mass, String basis,
            Span span) {
    }

    /** A pin of a device or a cavity of a housing. */
    public record Pin(Name name, String title) {
    }

    /**
     * An internal connection.
     *
     * @param from       a pin
     * @param to         another pin
     * @param through    resistance of the connection, or rating of what it holds; empty when not given
     * @param states     the states in which it is closed; empty means always
     * @param protective true when the connection is a fuse, link or breaker
     * @param when       the vehicles in which it is there
     * @param span       the whole line
     */
    public record Join(Ref from, Ref to, Optional<Quantity> through, List<Name> states, boolean protective,
            Expression when, Span span) {
    }

    private static String inOneWord(Enum<?> constant) {
        String[] words = constant.name().toLowerCase(Locale.ROOT).split("_");
        for (int i = 1; i < words.length; i++) {
            words[i] = Character.toUpperCase(words[i].charAt(0)) + words[i].substring(1);
        }
        return String.join("", words);
    }

    /** The first figure of a kind that is stated without a range or with one; empty when none is. */
    public Optional<Figure> figure(FigureKind wanted) {
        return figures.stream().map(Fact::value).filter(figure -> figure.kind() == wanted).findFirst();
    }

    /** The first word of a kind; empty when none is stated. */
    public Optional<String> word(WordKind wanted) {
        return words.stream().map(Fact::value).filter(word -> word.kind() == wanted).map(Word::text).findFirst();
    }

    /** True when a pin or cavity of that name exists. */
    public boolean hasPin(String pin) {
        return pins.stream().anyMatch(each -> each.name().text().equals(pin));
    }
}
