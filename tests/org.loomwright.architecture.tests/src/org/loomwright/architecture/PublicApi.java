// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What a bundle shows to others: the public classes of its packages, except those called {@code internal}. */
final class PublicApi {

    private PublicApi() {
    }

    /** The types in a bundle's API that are neither ours nor of {@code java.*}, each with the class that shows it. */
    static List<String> foreignTypes(Bundle bundle) throws IOException {
        List<String> found = new ArrayList<>();
        for (Path file : bundle.classFiles()) {
            ClassFile compiled = ClassFile.read(file);
            if (!compiled.isPublic() || isInternal(compiled.name())) {
                continue;
            }
            for (String type : compiled.shownTypes()) {
                if (!type.startsWith("java.") && !type.startsWith(AllowedUses.PREFIX)) {
                    found.add(compiled.name() + " shows " + type);
                }
            }
        }
        return found;
    }

    /** True if a package or class lies in an {@code internal} package. */
    static boolean isInternal(String name) {
        return List.of(name.split("\\.")).contains("internal");
    }
}
