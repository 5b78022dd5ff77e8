// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Colour;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Fact;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Location;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Run;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;
import org.loomwright.quantity.ConductorSize;
import org.loomwright.quantity.Length;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.quantity.Tolerance;
import org.loomwright.quantity.Unit;

/**
 * Takes out again what {@link WiringPacking} put in, line by line in the same order. Bytes that it did not make lead to
 * a {@link RuntimeException} or to wrong values; a checksum keeps them away. The ways to read a thing are made once,
 * not at each of the thousands of places that use them. For one thread.
 */
final class WiringUnpacking {

    private static final Wiring.Kind[] KINDS = Wiring.Kind.values();
    private static final Run.Kind[] RUNS = Run.Kind.values();
    private static final Connector.CavityKind[] CAVITIES = Connector.CavityKind.values();
    private static final Ours.SettingKind[] SETTINGS = Ours.SettingKind.values();
    private static final Ours.Objective[] OBJECTIVES = Ours.Objective.values();
    private static final Measure.Provenance[] PROVENANCES = Measure.Provenance.values();
    private static final Measure.MeasuredTo[] ENDS = Measure.MeasuredTo.values();
    private static final Relation[] RELATIONS = Relation.values();

    private final LineIndex lines;
    private final Unpacking in;
    private final Map<String, Quantity> quantities = new HashMap<>();
    private final Map<String, ConductorSize> sizes = new HashMap<>();
    private final Supplier<Ref> aRef = this::ref;
    private final Supplier<Quantity> aQuantity = this::quantity;
    private final Supplier<Tolerance> aTolerance = this::tolerance;
    private final Supplier<Colour> aColour = this::colour;
    private final Supplier<Measure> aMeasure = this::measure;
    private final Supplier<Location> aLocation = this::location;
    private final Supplier<Fact<Ref>> refFact = () -> fact(aRef);
    private final Supplier<Fact<Tolerance>> toleranceFact = () -> fact(aTolerance);
    private final Supplier<Fact<Colour>> colourFact = () -> fact(aColour);
    private final Supplier<Fact<Measure>> measureFact = () -> fact(aMeasure);
    private final Supplier<Fact<ConductorSize>> sizeFact;
    private final Supplier<Fact<Circuit.End>> endFact;
    private final Supplier<Fact<String>> textFact;
    private int last;
    private boolean here;

    WiringUnpacking(LineIndex lines, byte[] bytes) {
        this.lines = lines;
        in = new Unpacking(bytes, 0);
        Supplier<ConductorSize> aSize = this::size;
        Supplier<Circuit.End> anEnd = this::end;
        Supplier<String> aText = in::text;
        sizeFact = () -> fact(aSize);
        endFact = () -> fact(anEnd);
        textFact = () -> fact(aText);
    }

    List<Wiring> unpack() {
        List<Wiring> wirings = each(this::wiring);
        if (!in.isEmpty()) {
            throw new IllegalArgumentException("damaged");
        }
        return wirings;
    }

    private Wiring wiring() {
        return new Wiring(KINDS[in.small()], name(), in.text(), ref(), maybe(aRef), when(),
                each(() -> new Wiring.Sheet(in.text(), in.text(), span())),
                new Wiring.Defaults(each(toleranceFact), each(refFact)),
                maybe(aRef), each(this::run), each(this::connector), each(this::stud), each(this::device),
                each(this::circuit), each(this::placed), ours(), span());
    }

    private Run run() {
        return new Run(RUNS[in.small()], name(), maybe(aRef), maybe(aRef), maybe(aMeasure),
                each(() -> new Run.Breakout(name(), maybe(aRef), measure(), when(), span())),
                each(() -> new Run.Barrier(name(), measure(), span())),
                each(() -> new Run.Slack(ref(), quantity(), span())),
                each(() -> new Run.Bend(name(), measure(), quantity(), when(), span())), when(), span());
    }

    private Connector connector() {
        return new Connector(name(), in.text(), maybe(aRef), maybe(aRef), each(refFact),
                each(refFact),
                each(() -> new Connector.CavityFact(CAVITIES[in.small()], name(), ref(), when(), span())),
                each(aRef), when(), span());
    }

    private Wiring.Stud stud() {
        return new Wiring.Stud(name(), maybe(aRef), maybe(aRef), maybe(aRef), when(), span());
    }

    private Device device() {
        return new Device(name(), in.text(), each(refFact), maybe(aRef), maybe(aRef),
                in.bit(), when(), span());
    }

    private Circuit circuit() {
        return new Circuit(name(), in.text(), each(colourFact), each(this::wire),
                each(() -> new Circuit.Splice(name(), location(), maybe(aRef), when(), span())),
                each(() -> new Circuit.Origin(in.text(), maybe(aColour), ref(), span())),
                maybe(textFact), when(), span());
    }

    private Circuit.Wire wire() {
        return new Circuit.Wire(name(), each(sizeFact), each(refFact),
                each(colourFact), each(endFact), each(endFact),
                each(measureFact), in.text(), maybe(textFact), when(), span());
    }

    private Circuit.End end() {
        return new Circuit.End(ref(), name());
    }

    private Wiring.Placed placed() {
        return new Wiring.Placed(name(), ref(), location(), maybe(aLocation), when(), span());
    }

    private Ours ours() {
        return new Ours(each(aRef),
                each(() -> new Ours.Setting(SETTINGS[in.small()], maybe(aQuantity), maybe(aTolerance),
                        maybe(aRef), span())),
                each(() -> new Ours.Cap(ref(), maybe(aRef), maybe(aQuantity), when(), span())),
                each(() -> OBJECTIVES[in.small()]));
    }

    private Location location() {
        return new Location(maybe(aRef), maybe(aRef), maybe(aMeasure));
    }

    private Measure measure() {
        return new Measure(maybe(aQuantity), maybe(aTolerance), PROVENANCES[in.small()], in.small(),
                ENDS[in.small()], in.bit(), in.bit(), span());
    }

    private <T> Fact<T> fact(Supplier<T> value) {
        return new Fact<>(value.get(), when(), span());
    }

    /** Both are the same few again and again, and reading them is work. */
    private Quantity quantity() {
        return quantities.computeIfAbsent(in.text(), text -> {
            int space = text.lastIndexOf(' ');
            return new Quantity(text.substring(0, space), Unit.ofSymbol(text.substring(space + 1)).orElseThrow());
        });
    }

    private ConductorSize size() {
        return sizes.computeIfAbsent(in.text(), text -> {
            int space = text.lastIndexOf(' ');
            return new ConductorSize(SizeSystem.ofSymbol(text.substring(space + 1)).orElseThrow(),
                    text.substring(0, space));
        });
    }

    private Tolerance tolerance() {
        return new Tolerance(new Length(in.number()), new Length(in.number()));
    }

    private Colour colour() {
        return new Colour(in.text(), in.text());
    }

    private Name name() {
        return new Name(in.text(), span());
    }

    private Ref ref() {
        return new Ref(in.text(), in.text(), span());
    }

    private Expression when() {
        int kind = in.small();
        return switch (kind) {
            case 0 -> new Expression.Always(start(), length());
            case 1 -> new Expression.Choice(in.text(), start(), length());
            case 2 -> {
                String group = in.text();
                String member = in.text();
                yield new Expression.Compare(group, RELATIONS[in.small()], member, start(), length());
            }
            case 3 -> new Expression.Range(in.text(), in.text(), in.text(), start(), length());
            case 4 -> new Expression.Not(when(), start(), length());
            case 5 -> new Expression.And(each(this::when), start(), length());
            case 6 -> new Expression.Or(each(this::when), start(), length());
            default -> throw new IllegalArgumentException("damaged");
        };
    }

    private Span span() {
        int start = start();
        return start < 0 ? Span.NONE : lines.span(start, length());
    }

    /** Where a stretch starts; {@link Expression#NOWHERE} when it is nowhere. */
    private int start() {
        long by = in.number() - 1;
        here = by >= 0;
        if (here) {
            last += (int) ((by & 1) == 0 ? by >>> 1 : -(by + 1 >>> 1));
        }
        return here ? last : Expression.NOWHERE;
    }

    private int length() {
        return here ? in.small() : Expression.NOWHERE;
    }

    private <T> List<T> each(Supplier<T> step) {
        int size = in.size();
        if (size == 0) {
            return List.of();
        }
        List<T> list = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            list.add(step.get());
        }
        return List.copyOf(list);
    }

    private <T> Optional<T> maybe(Supplier<T> step) {
        return in.bit() ? Optional.of(step.get()) : Optional.empty();
    }
}
