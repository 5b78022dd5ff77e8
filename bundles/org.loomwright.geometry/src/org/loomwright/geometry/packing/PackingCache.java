// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.packing;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.LongAdder;

/**
 * Remembers packings, so that the same wires in many stretches of many harnesses are searched once. Two answers are
 * kept apart: the quick one and the thorough one, so that what is told does not depend on what was asked before.
 *
 * <p>May be asked by many threads; equal questions at the same time are searched once. Lives as long as its owner, who
 * passes it to those who ask.
 */
public final class PackingCache {

    private final PackingSearch quick;
    private final PackingSearch thorough;
    private final Map<List<Double>, Packing> laid = new ConcurrentHashMap<>();
    private final Map<List<Double>, Packing> packed = new ConcurrentHashMap<>();
    private final LongAdder searches = new LongAdder();
    private final LongAdder work = new LongAdder();

    /** A cache of {@link LaidPacking} and {@link SeededSearch}. */
    public PackingCache() {
        this(new LaidPacking(), new SeededSearch());
    }

    /** A cache of the answers of two searches. */
    public PackingCache(PackingSearch quick, PackingSearch thorough) {
        this.quick = quick;
        this.thorough = thorough;
    }

    /** The quick answer: at once, and up to a seventh too thick. */
    public Packing laid(List<Double> diameters) {
        return laid.computeIfAbsent(key(diameters), each -> search(quick, each));
    }

    /** The thorough answer: some hundredths of a second the first time. */
    public Packing packed(List<Double> diameters) {
        return packed.computeIfAbsent(key(diameters), each -> search(thorough, each));
    }

    /** How many questions were searched rather than remembered, both kinds together. */
    public long searches() {
        return searches.sum();
    }

    /** Pairs of circles looked at in all searches. */
    public long work() {
        return work.sum();
    }

    private Packing search(PackingSearch search, List<Double> diameters) {
        PackingSearch.Found found = search.search(diameters.stream().mapToDouble(Double::doubleValue).toArray());
        searches.increment();
        work.add(found.work());
        return found.packing();
    }

    private static List<Double> key(List<Double> diameters) {
        Double[] rising = diameters.toArray(Double[]::new);
        Arrays.sort(rising);
        return List.of(rising);
    }
}
