// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.loomwright.app.cache.ReportCache;

/**
 * Where reports are kept: in the folder that {@code LOOMWRIGHT_CACHE} names, else in {@code loomwright/reports} of the
 * user's cache folder (freedesktop.org's XDG Base Directory Specification; {@code LOCALAPPDATA} where there is none).
 */
final class Caches {

    /** The variable that names the folder; {@code off} for none. */
    static final String FOLDER = "LOOMWRIGHT_CACHE";

    private static final String OFF = "off";

    private Caches() {
    }

    /** Returns the cache of the call; empty when the user wants none, has no folder, or the build cannot be told. */
    static Optional<ReportCache> of(Door door, boolean wanted) {
        if (!wanted) {
            return Optional.empty();
        }
        return folder(door.folder(), door.environment()).flatMap(folder -> Build.identity()
                .map(build -> new ReportCache(folder, build, ReportCache.USUAL_BOUND)));
    }

    /** Returns the folder. Relative paths in the variables of the system do not count, as the specification says. */
    static Optional<Path> folder(Path base, Map<String, String> environment) {
        String own = environment.getOrDefault(FOLDER, "");
        if (own.equals(OFF)) {
            return Optional.empty();
        }
        try {
            if (!own.isEmpty()) {
                return Optional.of(base.resolve(own));
            }
            for (String variable : new String[] {"XDG_CACHE_HOME", "HOME", "LOCALAPPDATA"}) {
                String value = environment.getOrDefault(variable, "");
                Path folder = Path.of(value, variable.equals("HOME") ? ".cache" : "");
                if (!value.isEmpty() && folder.isAbsolute()) {
                    return Optional.of(folder.resolve("loomwright").resolve("reports"));
                }
            }
        } catch (InvalidPathException e) {
            // A folder that cannot be is as good as none.
        }
        return Optional.empty();
    }
}
