// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.merge;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.merge.ElementMerger;
import org.loomwright.compare.merge.Marks;
import org.loomwright.compare.merge.Merged;
import org.loomwright.compare.merge.Version;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;

/** Reads and merges single files. */
final class Merging {

    private final SourceReader reader = LoomReader.create();

    Source source(String text) {
        return reader.read("file.loom", text.getBytes(StandardCharsets.UTF_8));
    }

    FactSheet facts(String text) {
        return FactSheet.of(Project.link(List.of(source(text))));
    }

    Version version(String text) {
        return new Version(text, facts(text));
    }

    Merged merge(Version base, Version ours, Version theirs) {
        return new ElementMerger().merge(base, ours, theirs, new Marks("ours", "theirs", Marks.USUAL)).orElseThrow();
    }

    Merged merge(String base, String ours, String theirs) {
        return merge(version(base), version(ours), version(theirs));
    }

    /** The facts; elements that have one name are numbered as they stand, which means nothing. */
    static List<String> unnumbered(FactSheet sheet) {
        List<String> elements = new ArrayList<>();
        StringBuilder element = new StringBuilder();
        for (String line : sheet.content()) {
            if (!line.startsWith(" ")) {
                elements.add(element.toString());
                element.setLength(0);
            }
            element.append(line.replaceAll(" \\(no\\. \\d+\\)", "")).append('\n');
        }
        elements.add(element.toString());
        return elements.stream().sorted().toList();
    }
}
