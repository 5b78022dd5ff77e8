// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Holds bundles against the allowed uses; what it finds is told in one sentence each. */
final class UsesCheck {

    private final AllowedUses allowed;

    UsesCheck(AllowedUses allowed) {
        this.allowed = allowed;
    }

    /** What a bundle uses against the rules, by its manifest and by its classes. */
    List<String> violations(Bundle bundle) throws IOException {
        if (!bundle.name().startsWith(AllowedUses.PREFIX) || !allowed.rooms().containsKey(bundle.room())) {
            return List.of(bundle.name() + " does not stand in the list of allowed uses");
        }
        List<String> found = new ArrayList<>();
        for (String header : List.of("Require-Bundle", "Import-Package")) {
            for (String name : bundle.header(header)) {
                if (!allowed.allows(bundle.room(), name)) {
                    found.add(bundle.name() + " may not use " + name + ", but its " + header + " names it");
                }
            }
        }
        for (Path file : bundle.classFiles()) {
            ClassFile compiled = ClassFile.read(file);
            for (String type : compiled.types()) {
                if (!allowed.allows(bundle.room(), packageOf(type))) {
                    found.add(bundle.name() + " may not use " + type + ", but " + compiled.name() + " does");
                }
            }
        }
        return found;
    }

    private static String packageOf(String type) {
        return type.substring(0, Math.max(0, type.lastIndexOf('.')));
    }
}
