// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.jar.JarFile;

/** The version of the program. */
final class Version {

    private static final String UNRELEASED = "unreleased";

    private Version() {
    }

    /** The version of the bundle that this class was loaded from; {@code unreleased} when run from class files. */
    static String text() {
        CodeSource source = Version.class.getProtectionDomain().getCodeSource();
        if (source == null || source.getLocation() == null) {
            return UNRELEASED;
        }
        try {
            Path place = Path.of(source.getLocation().toURI());
            return Files.isRegularFile(place) ? of(place) : UNRELEASED;
        } catch (IOException | URISyntaxException | RuntimeException e) {
            return UNRELEASED;
        }
    }

    private static String of(Path jar) throws IOException {
        try (JarFile file = new JarFile(jar.toFile())) {
            String version = file.getManifest() == null ? null
                    : file.getManifest().getMainAttributes().getValue("Bundle-Version");
            return version == null ? UNRELEASED : version;
        }
    }
}
