// SPDX-License-Identifier: EPL-2.0
package org.loomwright.stock;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * All files of the stock with the parts that stand in them. Immutable; safe for use by several threads. No two parts
 * have one name.
 */
public final class Stock {

    /** What stands before the name of a file of the stock where a place in it is named: {@code stock:cables.loom}. */
    public static final String PREFIX = "stock:";

    /** The files, in the order in which a person would look for a part. */
    private static final List<String> FILES = List.of("cables.loom", "links.loom", "terminals.loom", "seals.loom",
            "housings.loom", "fuses.loom", "relays.loom", "lamps.loom", "sources.loom", "loads.loom", "coverings.loom",
            "fixings.loom");

    private final List<StockFile> files;
    private final Map<String, StockFile> byPart = new LinkedHashMap<>();
    private final Map<String, StockFile.Entry> entries = new LinkedHashMap<>();

    private Stock(List<StockFile> files) {
        this.files = List.copyOf(files);
        for (StockFile file : files) {
            for (StockFile.Entry entry : file.entries()) {
                byPart.put(entry.name(), file);
                entries.put(entry.name(), entry);
            }
        }
    }

    /** Returns the stock that is shipped; it is read when it is first asked for. */
    public static Stock shipped() {
        return Shipped.STOCK;
    }

    private static Stock read() {
        List<StockFile> files = new ArrayList<>();
        for (String name : FILES) {
            files.add(StockFile.of(name, text(name)));
        }
        return new Stock(files);
    }

    private static String text(String name) {
        try (InputStream stream = Stock.class.getResourceAsStream(name)) {
            if (stream == null) {
                throw new IllegalStateException("the stock lacks its file " + name);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The text of one file of the stock without reading the others; empty if it has none of that name.
     *
     * @param place the name of the file as places in it are named: {@code stock:cables.loom}
     */
    public static Optional<String> textOf(String place) {
        return FILES.stream().filter(name -> place.equals(PREFIX + name)).findFirst().map(Stock::text);
    }

    /** The files, in order. */
    public List<StockFile> files() {
        return files;
    }

    /** The names of all parts, in order of file and place. */
    public Set<String> names() {
        return Collections.unmodifiableSet(entries.keySet());
    }

    /** The file in which a part stands; empty if there is no such part. */
    public Optional<StockFile> fileOf(String part) {
        return Optional.ofNullable(byPart.get(part));
    }

    /** A part as it stands in its file, with the comment above it; empty if there is no such part. */
    public Optional<String> source(String part) {
        return fileOf(part).map(file -> file.source(entries.get(part)));
    }

    /** The names among some that are parts, and those of the parts that these are like, and so on. */
    public Set<String> withBases(Set<String> names) {
        Set<String> all = new TreeSet<>();
        Deque<String> open = new ArrayDeque<>(names);
        while (!open.isEmpty()) {
            String name = open.pop();
            StockFile.Entry entry = entries.get(name);
            if (entry != null && all.add(name) && !entry.like().isEmpty()) {
                open.push(entry.like());
            }
        }
        return all;
    }

    private static final class Shipped {
        private static final Stock STOCK = read();

        private Shipped() {
        }
    }
}
