// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.load;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Shelf;
import org.loomwright.lang.SourceReader;
import org.loomwright.stock.Stock;
import org.loomwright.stock.StockFile;

/**
 * The stock that is shipped, as a shelf. Of its files only those are parsed that hold a part that is asked for, and of
 * them only these parts; nothing is read before somebody asks. The sources have the whole text, so that any line of
 * them can be shown. Safe for use by several threads.
 */
public final class StockShelf implements Shelf {

    private final SourceReader reader;

    /** @param reader reads one source */
    public StockShelf(SourceReader reader) {
        this.reader = reader;
    }

    @Override
    public Set<String> names() {
        return Stock.shipped().names();
    }

    @Override
    public List<Source> take(Set<String> names) {
        Stock all = Stock.shipped();
        Set<String> wanted = all.withBases(names);
        List<Source> sources = new ArrayList<>();
        for (StockFile file : all.files()) {
            if (file.entries().stream().anyMatch(entry -> wanted.contains(entry.name()))) {
                Source read = reader.read(Stock.PREFIX + file.name(),
                        file.only(wanted).getBytes(StandardCharsets.UTF_8));
                sources.add(new Source(read.file(), file.text(), read.elements(), read.problems()));
            }
        }
        return List.copyOf(sources);
    }
}
