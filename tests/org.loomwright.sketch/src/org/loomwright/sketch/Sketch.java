// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sketch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Element;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Measure.MeasuredTo;
import org.loomwright.harness.Measure.Provenance;
import org.loomwright.harness.Name;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Tolerance;
import org.loomwright.quantity.Unit;

/**
 * A project put together by a test without any source text: the platform orrin (years 1964 to 1971; saloon, coupe,
 * estate; option fogLamps; upgrade fan) and what the test adds. Every element has a span of its own; {@link Span#line}
 * counts them.
 */
public final class Sketch {

    private final List<Name> places = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private final List<WiringSketch> wirings = new ArrayList<>();
    private int spans;

    public Span span() {
        spans++;
        return new Span("orrin.loom", spans * 10, 9, spans, 1);
    }

    public Name name(String text) {
        return new Name(text, span());
    }

    public Ref ref(String text) {
        return Ref.of(text, span());
    }

    public Sketch part(Part part) {
        parts.add(part);
        return this;
    }

    public WiringSketch drawing(String name) {
        return wiring(Wiring.Kind.DRAWING, name);
    }

    public WiringSketch harness(String name) {
        return wiring(Wiring.Kind.HARNESS, name);
    }

    private WiringSketch wiring(Wiring.Kind kind, String name) {
        WiringSketch wiring = new WiringSketch(this, kind, name);
        wirings.add(wiring);
        return wiring;
    }

    void place(String name) {
        if (places.stream().noneMatch(each -> each.text().equals(name))) {
            places.add(name(name));
        }
    }

    public Project project() {
        List<Element> elements = new ArrayList<>();
        elements.add(new Platform(name("orrin"), "", Optional.empty(),
                Optional.of(new Platform.Years(1964, 1971, span())), List.of(),
                List.of(new Platform.Group(name("body"), "", List.of(new Platform.Member(name("saloon"), ""),
                        new Platform.Member(name("coupe"), ""), new Platform.Member(name("estate"), "")), span())),
                List.of(new Platform.Option(name("fogLamps"), "", false, span()),
                        new Platform.Option(name("fan"), "", true, span())),
                List.of(), List.of(), places.stream().map(each -> new Platform.Place(each, "", Optional.empty(),
                        new Expression.Always(), each.span())).toList(),
                List.of(), List.of(), List.of(), List.of(), List.of(), span()));
        elements.add(new Catalogue(name("stock"), "", List.copyOf(parts), span()));
        wirings.forEach(each -> elements.add(each.wiring()));
        return Project.link(List.of(new Source("orrin.loom", "", List.copyOf(elements), List.of())));
    }

    public WiringView view(String name) {
        return project().wiring(name).orElseThrow();
    }

    public static Expression is(String choice) {
        return new Expression.Choice(choice);
    }

    public static Expression not(String choice) {
        return new Expression.Not(is(choice));
    }

    public static Expression upTo(int year) {
        return new Expression.Compare("year", Relation.LE, Integer.toString(year));
    }

    public static Expression from(int year) {
        return new Expression.Compare("year", Relation.GE, Integer.toString(year));
    }

    public static Quantity quantity(String text) {
        int space = text.lastIndexOf(' ');
        return new Quantity(text.substring(0, space), Unit.ofSymbol(text.substring(space + 1)).orElseThrow());
    }

    /** {@code 10 mm} for a symmetric tolerance, {@code 0 mm / 25 mm} for minus and plus. */
    public static Tolerance tolerance(String text) {
        String[] sides = text.split(" / ");
        Length minus = Length.of(quantity(sides[0]));
        return sides.length == 1 ? Tolerance.symmetric(minus) : new Tolerance(minus, Length.of(quantity(sides[1])));
    }

    /**
     * {@code 12.5 in}, {@code 300 mm ± 5 mm}, {@code 7 in, sample}, {@code 90 mm, path}, {@code 90 mm, tip},
     * {@code 90 mm, pinned}, {@code unknown}.
     */
    public Measure measure(String text) {
        List<String> words = List.of(text.split(", "));
        String[] value = words.getFirst().split(" ± ");
        boolean unknown = value[0].equals("unknown");
        Provenance provenance = unknown ? Provenance.UNKNOWN : words.contains("sample") ? Provenance.SAMPLE
                : words.contains("scaled") ? Provenance.SCALED : Provenance.SHEET;
        MeasuredTo end = words.contains("tip") ? MeasuredTo.TIP : words.contains("face") ? MeasuredTo.FACE
                : words.contains("housing") ? MeasuredTo.HOUSING : MeasuredTo.UNSTATED;
        return new Measure(unknown ? Optional.empty() : Optional.of(quantity(value[0])),
                value.length < 2 ? Optional.empty() : Optional.of(tolerance(value[1])), provenance, 0, end,
                words.contains("path"), words.contains("pinned"), span());
    }
}
