// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.harness.Source;

/** The texts of a project's files, into which findings point. */
@FunctionalInterface
public interface Texts {

    /** Returns the decoded text of a file without a byte order mark; empty when there is none to show. */
    String of(String file);

    /** The texts of sources that are at hand. */
    static Texts of(List<Source> sources) {
        Map<String, String> texts = new HashMap<>();
        sources.forEach(source -> texts.put(source.file(), source.text()));
        return file -> texts.getOrDefault(file, "");
    }
}
