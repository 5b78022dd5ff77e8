// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;
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
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Tolerance;

/**
 * Packs drawings and harnesses of one file. A span takes two or three bytes: how far it is from the one before, and its
 * length; its line follows from the text. {@link WiringUnpacking} is the other direction, line by line. For one thread.
 */
final class WiringPacking {

    private final LineIndex lines;
    private final Packing out = new Packing();
    private int last;

    WiringPacking(LineIndex lines) {
        this.lines = lines;
    }

    /** Packs all of them. Throws {@link IllegalArgumentException} for a span that is not one of this file's text. */
    byte[] pack(List<Wiring> wirings) {
        each(wirings, this::wiring);
        return out.bytes();
    }

    private void wiring(Wiring each) {
        word(each.kind());
        name(each.name());
        out.text(each.title());
        ref(each.platform());
        maybe(each.position(), this::ref);
        when(each.when());
        each(each.sheets(), sheet -> {
            out.text(sheet.number()).text(sheet.issue());
            span(sheet.span());
        });
        each(each.defaults().tolerance(), fact -> fact(fact, this::tolerance));
        each(each.defaults().cable(), fact -> fact(fact, this::ref));
        maybe(each.datum(), this::ref);
        each(each.runs(), this::run);
        each(each.connectors(), this::connector);
        each(each.studs(), this::stud);
        each(each.devices(), this::device);
        each(each.circuits(), this::circuit);
        each(each.placed(), this::placed);
        ours(each.ours());
        span(each.span());
    }

    private void run(Run each) {
        word(each.kind());
        name(each.name());
        maybe(each.from(), this::ref);
        maybe(each.to(), this::ref);
        maybe(each.length(), this::measure);
        each(each.breakouts(), breakout -> {
            name(breakout.name());
            maybe(breakout.after(), this::ref);
            measure(breakout.at());
            when(breakout.when());
            span(breakout.span());
        });
        each(each.barriers(), barrier -> {
            name(barrier.name());
            measure(barrier.at());
            span(barrier.span());
        });
        each(each.slacks(), slack -> {
            ref(slack.before());
            quantity(slack.atMost());
            span(slack.span());
        });
        each(each.bends(), bend -> {
            name(bend.name());
            measure(bend.at());
            quantity(bend.radius());
            when(bend.when());
            span(bend.span());
        });
        when(each.when());
        span(each.span());
    }

    private void connector(Connector each) {
        name(each.name());
        out.text(each.title());
        maybe(each.place(), this::ref);
        maybe(each.branch(), this::ref);
        each(each.housing(), fact -> fact(fact, this::ref));
        each(each.mates(), fact -> fact(fact, this::ref));
        each(each.cavities(), cavity -> {
            word(cavity.kind());
            name(cavity.cavity());
            ref(cavity.value());
            when(cavity.when());
            span(cavity.span());
        });
        each(each.covers(), this::ref);
        when(each.when());
        span(each.span());
    }

    private void stud(Wiring.Stud each) {
        name(each.name());
        maybe(each.place(), this::ref);
        maybe(each.branch(), this::ref);
        maybe(each.ground(), this::ref);
        when(each.when());
        span(each.span());
    }

    private void device(Device each) {
        name(each.name());
        out.text(each.title());
        each(each.part(), fact -> fact(fact, this::ref));
        maybe(each.place(), this::ref);
        maybe(each.grounded(), this::ref);
        out.bit(each.returns());
        when(each.when());
        span(each.span());
    }

    private void circuit(Circuit each) {
        name(each.name());
        out.text(each.title());
        each(each.colours(), fact -> fact(fact, this::colour));
        each(each.wires(), this::wire);
        each(each.splices(), splice -> {
            name(splice.name());
            location(splice.at());
            maybe(splice.method(), this::ref);
            when(splice.when());
            span(splice.span());
        });
        each(each.origins(), origin -> {
            out.text(origin.number());
            maybe(origin.colour(), this::colour);
            ref(origin.drawing());
            span(origin.span());
        });
        maybe(each.asFactory(), fact -> fact(fact, out::text));
        when(each.when());
        span(each.span());
    }

    private void wire(Circuit.Wire each) {
        name(each.name());
        each(each.sizes(), fact -> fact(fact, size -> out.text(size.written())));
        each(each.cables(), fact -> fact(fact, this::ref));
        each(each.colours(), fact -> fact(fact, this::colour));
        each(each.from(), fact -> fact(fact, this::end));
        each(each.to(), fact -> fact(fact, this::end));
        each(each.lengths(), fact -> fact(fact, this::measure));
        out.text(each.legend());
        maybe(each.asFactory(), fact -> fact(fact, out::text));
        when(each.when());
        span(each.span());
    }

    private void end(Circuit.End each) {
        ref(each.target());
        name(each.cavity());
    }

    private void placed(Wiring.Placed each) {
        name(each.name());
        ref(each.part());
        location(each.from());
        maybe(each.to(), this::location);
        when(each.when());
        span(each.span());
    }

    private void ours(Ours each) {
        each(each.covers(), this::ref);
        each(each.settings(), setting -> {
            word(setting.kind());
            maybe(setting.value(), this::quantity);
            maybe(setting.tolerance(), this::tolerance);
            maybe(setting.place(), this::ref);
            span(setting.span());
        });
        each(each.caps(), cap -> {
            ref(cap.branch());
            maybe(cap.parkedAt(), this::ref);
            maybe(cap.within(), this::quantity);
            when(cap.when());
            span(cap.span());
        });
        each(each.order(), this::word);
    }

    private void location(Location each) {
        maybe(each.point(), this::ref);
        maybe(each.run(), this::ref);
        maybe(each.station(), this::measure);
    }

    private void measure(Measure each) {
        maybe(each.value(), this::quantity);
        maybe(each.tolerance(), this::tolerance);
        word(each.provenance());
        out.number(each.samples());
        word(each.end());
        out.bit(each.path()).bit(each.pinned());
        span(each.span());
    }

    private <T> void fact(Fact<T> each, Step<T> value) {
        value.put(each.value());
        when(each.when());
        span(each.span());
    }

    private void quantity(Quantity each) {
        out.text(each.written());
    }

    private void tolerance(Tolerance each) {
        out.number(each.minus().nanometres()).number(each.plus().nanometres());
    }

    private void colour(Colour each) {
        out.text(each.base()).text(each.tracer());
    }

    private void name(Name each) {
        out.text(each.text());
        span(each.span());
    }

    private void ref(Ref each) {
        out.text(each.text()).text(each.owner());
        span(each.span());
    }

    private void when(Expression each) {
        switch (each) {
            case Expression.Always ignored -> out.number(0);
            case Expression.Choice choice -> out.number(1).text(choice.name());
            case Expression.Compare compare -> {
                out.number(2).text(compare.group()).text(compare.member());
                word(compare.relation());
            }
            case Expression.Range range -> out.number(3).text(range.group()).text(range.from()).text(range.to());
            case Expression.Not not -> {
                out.number(4);
                when(not.operand());
            }
            case Expression.And and -> {
                out.number(5);
                each(and.operands(), this::when);
            }
            case Expression.Or or -> {
                out.number(6);
                each(or.operands(), this::when);
            }
        }
        if (each.offset() == Expression.NOWHERE && each.length() == Expression.NOWHERE) {
            out.number(0);
        } else {
            stretch(each.offset(), each.length());
        }
    }

    private void span(Span each) {
        if (each.equals(Span.NONE)) {
            out.number(0);
        } else if (each.equals(lines.span(each.offset(), each.length()))) {
            stretch(each.offset(), each.length());
        } else {
            throw new IllegalArgumentException("not a span of " + lines.file() + ": " + each);
        }
    }

    private void stretch(int offset, int length) {
        int by = offset - last;
        out.number(1L + (by < 0 ? ((long) -by << 1) - 1 : (long) by << 1)).number(length);
        last = offset;
    }

    private void word(Enum<?> constant) {
        out.number(constant.ordinal());
    }

    private <T> void each(List<T> list, Step<T> step) {
        out.number(list.size());
        list.forEach(step::put);
    }

    private <T> void maybe(Optional<T> maybe, Step<T> step) {
        out.bit(maybe.isPresent());
        maybe.ifPresent(step::put);
    }

    /** Packs one thing. */
    private interface Step<T> {
        void put(T each);
    }
}
