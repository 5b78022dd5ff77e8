// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Tolerance;

/**
 * Makes what lies along a harness, for {@link Bench}: runs, placed parts, limits, caps, and kits. Everything gets a
 * place of its own in {@code bench.loom}, behind those that the bench gives. A length is {@code 7 1/2 in}, {@code 130
 * mm path} or {@code unknown}; empty for none.
 */
public final class Laying {

    private int line = 100_000;

    private Span span() {
        line++;
        return new Span("bench.loom", line * 1000, 10, line, 1);
    }

    private Name name(String text) {
        return new Name(text, span());
    }

    private Ref ref(String text) {
        return Ref.of(text, span());
    }

    /** A length. */
    public Measure measure(String text) {
        boolean path = text.endsWith(" path");
        boolean unknown = text.equals("unknown");
        String value = path ? text.substring(0, text.length() - 5) : text;
        return new Measure(unknown ? Optional.empty() : Optional.of(Bench.quantity(value)), Optional.empty(),
                unknown ? Measure.Provenance.UNKNOWN : Measure.Provenance.SHEET, 0, Measure.MeasuredTo.UNSTATED, path,
                false, span());
    }

    /** A tolerance that is the same both ways. */
    public static Tolerance within(String length) {
        return Tolerance.symmetric(Length.of(Bench.quantity(length)));
    }

    /** A trunk; a stop is {@code wing 975 mm} or {@code unknown}, {@code | hinge 60 mm}, {@code ( sill 9 mm 30 mm}. */
    public Run trunk(String name, String... stops) {
        List<Run.Breakout> breakouts = new ArrayList<>();
        List<Run.Barrier> barriers = new ArrayList<>();
        List<Run.Bend> bends = new ArrayList<>();
        for (String stop : stops) {
            String[] words = stop.split(" ");
            switch (words[0]) {
                case "|" -> barriers.add(new Run.Barrier(name(words[1]), measure(stop.split(" ", 3)[2]), span()));
                case "(" -> bends.add(new Run.Bend(name(words[1]), measure(words[2] + " mm"),
                        Bench.quantity(words[4] + " mm"), Bench.when(words.length > 6 ? words[6] : ""), span()));
                default -> breakouts.add(new Run.Breakout(name(words[0]), Optional.empty(),
                        measure(stop.split(" ", 2)[1]), Bench.when(""), span()));
            }
        }
        return new Run(Run.Kind.TRUNK, name(name), Optional.empty(), Optional.empty(), Optional.empty(), breakouts,
                barriers, List.of(), bends, Bench.when(""), span());
    }

    /** A branch in some vehicles. */
    public Run branch(String name, String from, String to, String length, String condition) {
        return new Run(Run.Kind.BRANCH, name(name), Optional.of(ref(from)), Optional.of(ref(to)),
                length.isEmpty() ? Optional.empty() : Optional.of(measure(length)), List.of(), List.of(), List.of(),
                List.of(), Bench.when(condition), span());
    }

    /** A station on a run: {@code main 300 mm}; a point where there is no length: {@code leftWing}. */
    public Location at(String text) {
        String[] words = text.split(" ", 2);
        return words.length == 1 ? new Location(Optional.of(ref(text)), Optional.empty(), Optional.empty())
                : new Location(Optional.empty(), Optional.of(ref(words[0])), Optional.of(measure(words[1])));
    }

    /** A part at a spot. */
    public Wiring.Placed fit(String name, String part, String at, String condition) {
        return new Wiring.Placed(name(name), ref(part), at(at), Optional.empty(), Bench.when(condition), span());
    }

    /** A part from one spot to another. */
    public Wiring.Placed fit(String name, String part, String from, String to, String condition) {
        return new Wiring.Placed(name(name), ref(part), at(from), Optional.of(at(to)), Bench.when(condition), span());
    }

    /** A limit; for the whole harness when the place is empty. */
    public Ours.Setting limit(Ours.SettingKind kind, String length, String place) {
        return new Ours.Setting(kind, Optional.of(Bench.quantity(length)), Optional.empty(),
                place.isEmpty() ? Optional.empty() : Optional.of(ref(place)), span());
    }

    /** A tolerance of making. */
    public Ours.Setting made(Ours.SettingKind kind, Tolerance tolerance) {
        return new Ours.Setting(kind, Optional.empty(), Optional.of(tolerance), Optional.empty(), span());
    }

    /** A capped branch. */
    public Ours.Cap cap(String branch, String within, String condition) {
        return new Ours.Cap(ref(branch), Optional.empty(),
                within.isEmpty() ? Optional.<Quantity>empty() : Optional.of(Bench.quantity(within)),
                Bench.when(condition), span());
    }

    /** A kit of orrin: {@code needs} is empty, {@code frontKit}, {@code frontKit C} or {@code frontKit C or later}. */
    public Kit kit(String name, String revision, String needs, String condition, String contents, String... sold) {
        String[] words = needs.split(" ");
        Optional<Kit.Need> need = needs.isEmpty() ? Optional.empty() : Optional.of(new Kit.Need(ref(words[0]),
                words.length > 1 ? words[1] : "", needs.endsWith(" or later"), span()));
        return new Kit(name(name), "", revision, Optional.of(ref("orrin")), need,
                contents.isEmpty() ? List.of() : List.of(new Kit.Content(ref(contents), 1, Bench.when(""), span())),
                Arrays.stream(sold).map(each -> new Kit.Sold(each, "", span())).toList(), Bench.when(condition),
                span());
    }
}
