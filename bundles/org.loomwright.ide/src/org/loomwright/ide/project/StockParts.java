// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.project;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.loomwright.app.load.StockShelf;
import org.loomwright.harness.Part;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.stock.Stock;

/** The stock that is shipped, as an editor offers it: heads of all parts at once, facts of one on request. */
public final class StockParts {

    private static final Pattern HEAD = Pattern.compile(
            "([A-Za-z]+) ([A-Za-z0-9_]+)(?: \"((?:[^\"\\\\]|\\\\.)*)\")?(?: like ([A-Za-z0-9_]+))?.*", Pattern.DOTALL);

    private final StockShelf shelf;
    private final Map<String, Optional<Part>> parts = new ConcurrentHashMap<>();
    private volatile Map<String, Head> heads;

    /** @param reader reads one source */
    public StockParts(SourceReader reader) {
        shelf = new StockShelf(reader);
    }

    /**
     * What stands at the head of a part.
     *
     * @param kind  the word of the language: {@code terminal}
     * @param name  its name
     * @param title words for people; may be empty
     */
    public record Head(String kind, String name, String title) {
    }

    /** The heads of all parts, in the order of the stock. */
    public List<Head> heads() {
        return List.copyOf(byName().values());
    }

    /** The head of one part. */
    public Optional<Head> head(String name) {
        return Optional.ofNullable(byName().get(name));
    }

    private Map<String, Head> byName() {
        Map<String, Head> known = heads;
        if (known == null) {
            Map<String, Head> read = new LinkedHashMap<>();
            Stock stock = Stock.shipped();
            stock.files().forEach(file -> file.entries().forEach(entry -> {
                Matcher head = HEAD.matcher(file.text().substring(entry.start(), entry.end()));
                if (head.matches()) {
                    read.put(entry.name(), new Head(head.group(1), entry.name(),
                            head.group(3) == null ? "" : head.group(3)));
                }
            }));
            known = read;
            heads = known;
        }
        return known;
    }

    /** A part with all its facts. */
    public Optional<Part> part(String name) {
        if (head(name).isEmpty()) {
            return Optional.empty();
        }
        return parts.computeIfAbsent(name, wanted -> {
            List<Source> sources = new ArrayList<>(shelf.take(Set.of(wanted)));
            return Optional.ofNullable(Project.link(sources).parts().get(wanted));
        });
    }
}
