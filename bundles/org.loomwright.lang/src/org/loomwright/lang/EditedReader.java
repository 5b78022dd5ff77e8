// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.loomwright.harness.Circuit;
import org.loomwright.harness.Element;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;
import org.loomwright.lang.Change.Stretch;
import org.loomwright.lang.text.TextDecoder;
import org.loomwright.lang.text.TextDecoder.Decoded;

/**
 * Reads texts that are edited and read again, and remembers what it read. The result is always that of
 * {@link LoomReader}; but where the change lies in one circuit, or else in one element, only that is parsed, and
 * elements before it are the same objects as the last time. A text in which braces, comments or conflicts are not in
 * order is read as a whole.
 *
 * <p>Safe for use by several threads. Time is linear in the text, but only what is parsed weighs.
 */
public final class EditedReader implements SourceReader {

    /** How many texts are remembered, those that were read last. */
    private static final int MOST_TEXTS = 64;

    private final LoomReader reader;
    private final AtomicLong parsed = new AtomicLong();
    private final Map<String, Reading> last = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Reading> eldest) {
            return size() > MOST_TEXTS;
        }
    };

    EditedReader(LoomReader reader) {
        this.reader = reader;
    }

    /** Returns how many characters were parsed so far, for tests that guard growth. */
    public long parsed() {
        return parsed.get();
    }

    @Override
    public Source read(String file, byte[] bytes) {
        Decoded decoded = TextDecoder.decode(bytes);
        if (decoded.fault().isPresent()) {
            remember(file, null);
            return reader.read(file, bytes);
        }
        Reading before = remembered(file);
        Reading now = Optional.ofNullable(before).flatMap(known -> again(known, decoded.text()))
                .orElseGet(() -> parse(file, decoded.text()));
        remember(file, now.isLocal() ? now : null);
        return now.source();
    }

    private Reading remembered(String file) {
        synchronized (last) {
            return last.get(file);
        }
    }

    private void remember(String file, Reading reading) {
        synchronized (last) {
            if (reading == null) {
                last.remove(file);
            } else {
                last.put(file, reading);
            }
        }
    }

    private Reading parse(String file, String text) {
        parsed.addAndGet(text.length());
        return reader.reading(file, text);
    }

    private Optional<Reading> again(Reading before, String text) {
        if (before.text().equals(text)) {
            return Optional.of(before);
        }
        Change change = Change.between(before.text(), text);
        Stretch stretch = change.elements(before.elements());
        if (stretch.past() == stretch.first() + 1 && before.elements().get(stretch.first()) instanceof Wiring wiring) {
            Optional<Reading> read = change.circuit(wiring)
                    .flatMap(circuit -> circuit(before, change, stretch.first(), wiring, circuit));
            if (read.isPresent()) {
                return read;
            }
        }
        return stretch.from() == 0 && stretch.to() == before.text().length() ? Optional.empty()
                : elements(before, change, stretch);
    }

    private Optional<Reading> elements(Reading before, Change change, Stretch stretch) {
        Reading read = parse(before.file(), change.text(stretch));
        if (!read.isLocal()) {
            return Optional.empty();
        }
        Reading inner = read.moved(new Moved(0, stretch.from(), stretch.line() - 1));
        Moved moved = new Moved(stretch.to(), change.by(), change.lines());
        List<Element> whole = new ArrayList<>(before.elements().subList(0, stretch.first()));
        whole.addAll(inner.elements());
        before.elements().subList(stretch.past(), before.elements().size()).forEach(each -> whole.add(moved.of(each)));
        return Optional.of(before.replaced(change.now(), stretch.from(), stretch.to(), whole, inner, moved));
    }

    /** Reads a circuit within a drawing or harness that has nothing else. */
    private Optional<Reading> circuit(Reading before, Change change, int at, Wiring wiring, Stretch stretch) {
        String head = " ".repeat(wiring.span().column() - 1) + (wiring.isHarness() ? "harness" : "drawing")
                + " w of p {\n";
        String lines = change.text(stretch);
        Reading read = parse(before.file(), head + lines + "}\n");
        if (!read.isLocal() || read.elements().size() != 1 || !(read.elements().getFirst() instanceof Wiring around)
                || !hasOnlyCircuits(around)
                || read.problems().stream().map(each -> each.span().offset() - head.length())
                        .anyMatch(each -> each < 0 || each >= lines.length())) {
            return Optional.empty();
        }
        Moved there = new Moved(0, stretch.from() - head.length(), stretch.line() - 2);
        Moved moved = new Moved(stretch.to(), change.by(), change.lines());
        List<Circuit> circuits = new ArrayList<>(wiring.circuits().subList(0, stretch.first()));
        circuits.addAll(there.of(around.circuits()));
        wiring.circuits().subList(stretch.past(), wiring.circuits().size()).forEach(each ->
                circuits.add(moved.of(each)));
        List<Element> whole = new ArrayList<>(before.elements().subList(0, at));
        whole.add(with(moved.of(with(wiring, List.of())), circuits));
        before.elements().subList(at + 1, before.elements().size()).forEach(each -> whole.add(moved.of(each)));
        return Optional.of(before.replaced(change.now(), stretch.from(), stretch.to(), whole, read.moved(there),
                moved));
    }

    private static boolean hasOnlyCircuits(Wiring wiring) {
        Ours ours = wiring.ours();
        return wiring.sheets().isEmpty() && wiring.defaults().tolerance().isEmpty()
                && wiring.defaults().cable().isEmpty() && wiring.datum().isEmpty() && wiring.runs().isEmpty()
                && wiring.connectors().isEmpty() && wiring.studs().isEmpty() && wiring.devices().isEmpty()
                && wiring.placed().isEmpty() && ours.equals(Ours.NONE);
    }

    private static Wiring with(Wiring wiring, List<Circuit> circuits) {
        return new Wiring(wiring.kind(), wiring.name(), wiring.title(), wiring.platform(), wiring.position(),
                wiring.when(), wiring.sheets(), wiring.defaults(), wiring.datum(), wiring.runs(), wiring.connectors(),
                wiring.studs(), wiring.devices(), List.copyOf(circuits), wiring.placed(), wiring.ours(), wiring.span());
    }
}
