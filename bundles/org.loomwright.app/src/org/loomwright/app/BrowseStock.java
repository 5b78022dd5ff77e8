// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.loomwright.app.load.StockShelf;
import org.loomwright.harness.Part;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Spelling;
import org.loomwright.stock.Stock;
import org.loomwright.stock.StockFile;

/** Looks through the stock that is shipped. Safe for use by several threads. */
public final class BrowseStock {

    private final Stock stock = Stock.shipped();
    private final SourceReader reader;

    /** @param reader reads one source */
    public BrowseStock(SourceReader reader) {
        this.reader = reader;
    }

    /**
     * The parts of one file.
     *
     * @param title what the file holds, for people
     * @param parts its parts with all their facts, in order
     */
    public record Bay(String title, List<Part> parts) {
    }

    /**
     * The parts whose name, kind, title or words hold each of some words, whatever their case; all parts for no words.
     * One word that is the name of a part means that part alone. Files without such a part are left out.
     */
    public List<Bay> find(Collection<String> words) {
        List<Source> sources = new StockShelf(reader).take(stock.names());
        Project project = Project.link(sources);
        boolean named = words.size() == 1 && stock.names().containsAll(words);
        List<Bay> bays = new ArrayList<>();
        for (StockFile file : stock.files()) {
            List<Part> parts = file.entries().stream().map(entry -> project.parts().get(entry.name()))
                    .filter(part -> named ? words.contains(part.name().text()) : holds(part, words)).toList();
            if (!parts.isEmpty()) {
                bays.add(new Bay(title(sources, file), parts));
            }
        }
        return List.copyOf(bays);
    }

    private static String title(List<Source> sources, StockFile file) {
        return sources.stream().filter(source -> source.file().equals(Stock.PREFIX + file.name()))
                .flatMap(source -> source.elements().stream())
                .map(element -> ((org.loomwright.harness.Catalogue) element).title()).findFirst().orElseThrow();
    }

    private static boolean holds(Part part, Collection<String> words) {
        String text = Stream.concat(Stream.of(part.name().text(), part.kind().word(), part.title()),
                part.words().stream().filter(fact -> fact.value().kind() != Part.WordKind.SOURCE)
                        .map(fact -> fact.value().text())).map(each -> each.toLowerCase(Locale.ROOT))
                .reduce("", (all, each) -> all + "\n" + each);
        return words.stream().allMatch(word -> text.contains(word.toLowerCase(Locale.ROOT)));
    }

    /** A part as it stands in the stock, to be put into a catalogue; empty if there is none of that name. */
    public Optional<String> source(String name) {
        return stock.source(name);
    }

    /** The name that was meant by one that no part has. */
    public Optional<String> nearest(String name) {
        return Spelling.nearest(name, stock.names());
    }
}
