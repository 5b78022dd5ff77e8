// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Circuit.Wire;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Measure;
import org.loomwright.harness.Name;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.Waiver;
import org.loomwright.harness.Wiring;

/** What the records of the snapshot say of the corpus, and where they say that it stands. */
class SnapshotTest {
    static final List<String> FILES = Corpus.FILES;

    private static Source source(String file) {
        return Corpus.read(Corpus.text(file));
    }

    private static Wiring drawing() {
        return (Wiring) source("drawing.loom").elements().getFirst();
    }

    private static Wire wire(String name) {
        return drawing().circuits().getFirst().wires().stream().filter(each -> each.name().text().equals(name))
                .findFirst().orElseThrow();
    }

    private static <T> List<String> facts(List<Fact<T>> facts, Function<T, String> value) {
        return facts.stream().map(fact -> value.apply(fact.value()) + " when " + fact.when().words()).toList();
    }

    private static <T> List<String> facts(List<Fact<T>> facts) {
        return facts(facts, Object::toString);
    }

    @Test
    void conditionalFactsOfOneWire() {
        Wire wire = wire("c");
        assertEquals(List.of("18 ga when not halogen", "14 ga when halogen"), facts(wire.sizes()));
        assertEquals(List.of("S4 when not fan", "S5 when fan"), facts(wire.from()));
        assertEquals(List.of("H2:1 when always"), facts(wire.to()));
        assertEquals(List.of("BU when halogen"), facts(wire.colours()));
        assertEquals(List.of("14 in when fan"),
                facts(wire.lengths(), length -> length.value().orElseThrow().written()));
        assertEquals("12C", wire.legend());
        assertEquals("the factory ran it unfused", wire.asFactory().orElseThrow().value());
    }

    @Test
    void headFactHoldsOtherwise() {
        assertEquals(List.of("16 awg when not halogen", "14 awg when halogen"), facts(wire("d").sizes()));
        assertEquals(List.of("bulkhead12 when not year > 1967", "bulkhead14 when year > 1967"),
                facts(drawing().connectors().getFirst().housing()));
        Source source = Corpus.read("""
                circuit 1
                drawing d of p {
                    circuit 1 {
                        wire a 18 ga from X to Y {
                            size 16 ga when fan
                            size 14 ga when heater and not fan
                        }
                        wire b from X to Y {
                            size 18 ga
                            size 16 ga when fan
                        }
                    }
                }
                """);
        List<Wire> wires = ((Wiring) source.elements().getFirst()).circuits().getFirst().wires();
        assertEquals(List.of("18 ga when not (fan or heater and not fan)", "16 ga when fan",
                "14 ga when heater and not fan"), facts(wires.get(0).sizes()));
        assertEquals(List.of("18 ga when not fan", "16 ga when fan"), facts(wires.get(1).sizes()));
    }

    @Test
    void figuresOfOneKindHoldOtherwise() {
        Part motor = part("fanSmall");
        assertEquals(List.of("40 A when always", "60 A when always", "8 A when year <= 1966",
                "10 A when not year <= 1966"),
                facts(motor.figures(), figure -> figure.from().written()));
    }

    private static Part part(String name) {
        return ((Catalogue) source("catalogue.loom").elements().getFirst()).parts().stream()
                .filter(each -> each.name().text().equals(name)).findFirst().orElseThrow();
    }

    @Test
    void parts() {
        assertEquals(List.of("1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"),
                part("bulkhead12").pins().stream().map(pin -> pin.name().text()).toList());
        assertEquals(List.of("A", "B", "C", "D"),
                part("keySwitch").pins().stream().map(pin -> pin.name().text()).toList());
        assertEquals(List.of("18 ga", "0.8 mm2", "1/0 awg"),
                part("gpt").sizes().stream().map(size -> size.size().written()).toList());
        assertEquals("33 CFR 183.425", part("gpt").figures().getFirst().value().basis());
        Part relay = part("relay30");
        assertEquals(List.of("rest", "on", "dropped"), relay.states().stream().map(Name::text).toList());
        assertEquals(List.of("30-87 [on] not heater", "30-87a [rest, dropped] always"), relay.joins().stream()
                .map(join -> join.from() + "-" + join.to() + " " + join.states() + " " + join.when().words()).toList());
        assertEquals(Part.Kind.SPLICE_METHOD, part("crimped").kind());
        assertEquals("light green", part("LG").word(Part.WordKind.CALLED).orElseThrow());
        assertTrue(part("blade10").joins().getFirst().protective());
    }

    @Test
    void lengths() {
        List<Measure> stations = drawing().runs().getFirst().breakouts().stream().map(each -> each.at()).toList();
        assertEquals(317_500_000, stations.get(0).length().orElseThrow().nanometres());
        assertEquals("8 1/4 in", stations.get(1).value().orElseThrow().written());
        assertEquals("\u00b1 5 mm", stations.get(1).tolerance().orElseThrow().toString());
        Measure third = stations.get(2);
        assertEquals(List.of(Measure.Provenance.SAMPLE, 3, Measure.MeasuredTo.TIP, true, true),
                List.of(third.provenance(), third.samples(), third.end(), third.path(), third.pinned()));
        assertEquals(Measure.Provenance.UNKNOWN, stations.get(3).provenance());
        assertEquals(Optional.empty(), stations.get(3).value());
        assertEquals(Measure.Provenance.SCALED, drawing().runs().getFirst().barriers().getFirst().at().provenance());
        assertEquals("1 1/4 in", drawing().runs().getFirst().bends().getFirst().radius().written());
    }

    @Test
    void platform() {
        Platform platform = (Platform) source("platform.loom").elements().getFirst();
        assertEquals("12 V", platform.supply().orElseThrow().voltage().written());
        assertTrue(platform.supply().orElseThrow().negativeGround());
        assertEquals(List.of("coupe and year < 1966", "estate and (year 1964 .. 1965 or not heater)",
                "halogen and body != estate"),
                platform.constraints().stream().map(each -> each.never().words()).toList());
        assertEquals("fan", platform.constraints().get(2).needed().orElseThrow().words());
        assertEquals(List.of("saloon", "coupe", "estate"),
                platform.groups().getFirst().members().stream().map(member -> member.name().text()).toList());
        assertEquals(List.of(false, true, true), platform.options().stream().map(Platform.Option::upgrade).toList());
        assertEquals(List.of(true, false), platform.zones().stream().map(Platform.Zone::wet).toList());
        assertEquals(List.of(false, true, false), platform.grounds().stream().map(Platform.GroundNode::none).toList());
        assertEquals(List.of("keySwitch=start", "engine=cranking"), platform.modes().getFirst().settings().stream()
                .map(setting -> setting.subject() + "=" + setting.state()).toList());
    }

    @Test
    void kitsWaiversAndWhatOnlyAHarnessHas() {
        Source source = source("harness.loom");
        Ours ours = ((Wiring) source.elements().get(0)).ours();
        assertEquals(List.of("front64", "front67"), ours.covers().stream().map(Ref::text).toList());
        assertEquals(List.of(Ours.Objective.COPPER, Ours.Objective.EXCESS, Ours.Objective.LENGTH), ours.order());
        assertEquals(8, ours.settings().size());
        assertEquals("-0 mm / +25 mm", ours.settings().get(6).tolerance().orElseThrow().toString());
        Kit kit = (Kit) source.elements().get(1);
        assertEquals(List.of(1, 12), kit.contents().stream().map(Kit.Content::quantity).toList());
        assertEquals("v2.1", kit.sold().getFirst().at());
        assertTrue(kit.needs().orElseThrow().orLater());
        Waiver waiver = (Waiver) source.elements().get(3);
        assertEquals(Optional.of(LocalDate.of(2027, 6, 30)), waiver.until());
        assertEquals("11.9 V measured at the lamp on the \"bench\"", waiver.reason());
        assertEquals("12b", waiver.element());
        assertEquals("by C:\\dir", ((Waiver) source.elements().get(4)).reason());
    }

    @Test
    void circuitFacts() {
        Circuit circuit = drawing().circuits().getFirst();
        assertEquals(List.of("LG/BK when not coupe", "LG/WH when coupe"), facts(circuit.colours()));
        assertEquals("12b", circuit.origins().getFirst().number());
        assertEquals("J7 of dash64", drawing().connectors().getFirst().mates().getFirst().value().toString());
    }

    @ParameterizedTest
    @FieldSource("FILES")
    void spansHoldWhatTheyAreOf(String file) {
        Source source = source(file);
        check(source.elements(), source.text(), new Span("a.loom", 0, source.text().length(), 1, 1));
    }

    @Test
    void spansOfGeneratedTexts() {
        GeneratedTexts texts = new GeneratedTexts(21, true);
        for (int i = 0; i < 300; i++) {
            Source source = Corpus.read(texts.next());
            check(source.elements(), source.text(), new Span("a.loom", 0, source.text().length(), 1, 1));
        }
    }

    /** Names stand where their spans say, a part within the whole, and lines and columns agree with offsets. */
    private static void check(Object value, String text, Span around) {
        switch (value) {
            case Name name -> {
                if (!name.text().isEmpty()) {
                    String there = text.substring(name.span().offset(), name.span().end());
                    assertTrue(there.equals(name.text()) || around.length() >= there.length(), there);
                    checkSpan(name.span(), text, around);
                }
            }
            case Ref ref -> {
                if (!ref.text().isEmpty()) {
                    assertTrue(text.substring(ref.span().offset(), ref.span().end()).startsWith(ref.text()));
                    checkSpan(ref.span(), text, around);
                }
            }
            case Expression expression -> checkExpression(expression, text, around);
            case Optional<?> optional -> optional.ifPresent(each -> check(each, text, around));
            case Collection<?> list -> list.forEach(each -> check(each, text, around));
            case Record record when record.getClass().getPackageName().equals("org.loomwright.harness") -> {
                Span own = around;
                for (RecordComponent component : record.getClass().getRecordComponents()) {
                    if (component.getName().equals("span")) {
                        own = (Span) get(component, record);
                        checkSpan(own, text, around);
                    }
                }
                for (RecordComponent component : record.getClass().getRecordComponents()) {
                    // a fact of a head covers only its value, its condition comes from the block
                    if (!component.getName().equals("span")) {
                        check(get(component, record), text, record instanceof Fact<?> ? around : own);
                    }
                }
            }
            case null, default -> { }
        }
    }

    private static void checkExpression(Expression expression, String text, Span around) {
        if (expression.offset() >= 0) {
            assertTrue(expression.offset() >= around.offset()
                    && expression.offset() + expression.length() <= around.end());
            String there = text.substring(expression.offset(), expression.offset() + expression.length());
            switch (expression) {
                case Expression.Choice choice -> assertEquals(choice.name(), there);
                case Expression.Compare compare -> assertTrue(there.startsWith(compare.group())
                        && there.endsWith(compare.member()));
                case Expression.Range range -> assertTrue(there.startsWith(range.group())
                        && there.endsWith(range.to()));
                case Expression.Not not -> assertTrue(there.startsWith("not"));
                default -> { }
            }
        }
        switch (expression) {
            case Expression.Not not -> checkExpression(not.operand(), text, around);
            case Expression.And and -> and.operands().forEach(each -> checkExpression(each, text, around));
            case Expression.Or or -> or.operands().forEach(each -> checkExpression(each, text, around));
            default -> { }
        }
    }

    private static void checkSpan(Span span, String text, Span around) {
        assertTrue(span.offset() >= around.offset() && span.end() <= around.end(), span + " in " + around);
        String before = text.substring(0, span.offset());
        assertEquals(before.chars().filter(c -> c == '\n').count() + 1, span.line());
        assertEquals(span.offset() - before.lastIndexOf('\n'), span.column());
        assertEquals(text.substring(span.offset(), span.end()).strip(), text.substring(span.offset(), span.end()));
    }

    private static Object get(RecordComponent component, Record record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError(e);
        }
    }
}
