// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.content;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Tally;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Length;

/** How vehicles, lengths and parts are written; the same in every locale. */
public final class Words {

    private static final int MOST_CHOICES = 256;

    private Words() {
    }

    /** The vehicles in the fewest words; nothing hangs on them: {@code some vehicles} where they are too tangled. */
    public static String of(Condition condition) {
        try {
            return condition.words();
        } catch (TooManyCombinations e) {
            return "some vehicles";
        }
    }

    /** The same, and {@code all} for all that something is for. */
    public static String of(Condition condition, Condition whole) {
        return whole.implies(condition) ? "all" : of(within(condition, whole));
    }

    /**
     * A condition that says the same among some vehicles in fewer words: what each choice is by itself, where that is
     * enough to tell; else the condition.
     */
    private static Condition within(Condition condition, Condition whole) {
        if (whole.isAlways()) {
            return condition;
        }
        try {
            Condition inside = condition.and(whole);
            Condition told = condition.vehicles().all();
            for (String axis : inside.support()) {
                Condition choices = condition.vehicles().none();
                for (Assignment each : inside.assignments(Set.of(axis), MOST_CHOICES).list()) {
                    choices = choices.or(condition.vehicles().where(each));
                }
                if (!whole.implies(choices)) {
                    told = told.and(choices);
                }
            }
            return told.and(whole).equals(inside) ? told : condition;
        } catch (TooManyCombinations e) {
            return condition;
        }
    }

    /** {@code 4,608 vehicles}. */
    public static String count(Condition condition) {
        try {
            return Tally.vehicles(condition.count());
        } catch (TooManyCombinations e) {
            return "more vehicles than can be counted";
        }
    }

    /** Millimetres without the unit and without needless zeros. */
    public static String mm(Length length) {
        return plain(BigDecimal.valueOf(length.nanometres(), 6).setScale(1, RoundingMode.HALF_UP));
    }

    /** Millimetres; empty when nobody knows them. */
    public static String mm(Optional<Length> length) {
        return length.map(Words::mm).orElse("");
    }

    /** Metres, rounded up to a centimetre, so that nobody orders too little. */
    public static String metres(Length length) {
        return plain(BigDecimal.valueOf(length.nanometres(), 9).setScale(2, RoundingMode.CEILING));
    }

    /** A figure with so many decimals at most. */
    public static String figure(double value, int decimals) {
        return plain(BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP));
    }

    /** A figure with exactly so many decimals. */
    public static String fixed(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    /** The title of a part, else its name. */
    public static String title(String part, Map<String, Part> parts) {
        return Optional.ofNullable(parts.get(part)).map(Part::title).filter(each -> !each.isEmpty()).orElse(part);
    }

    /** {@code fusible link} for {@code FUSIBLE_LINK}. */
    public static String sort(Part.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** A figure of a part as its source has it: {@code 5 mm}, {@code 1.2 mm .. 1.3 mm}; empty when none is stated. */
    public static String figure(Optional<Part> part, Part.FigureKind kind) {
        return part.flatMap(each -> each.figure(kind)).map(each -> each.from().written()
                + each.upTo().map(to -> " .. " + to.written()).orElse("")).orElse("");
    }

    /** The word with its first letter large. */
    public static String capital(String text) {
        return text.isEmpty() ? text : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }
}
