// SPDX-License-Identifier: EPL-2.0
package org.loomwright.install;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Installs the feature from the update site into the product without it, as a user's installer would, and runs it. */
class FeatureInstallTest {

    private static final Path ROOT = Path.of(System.getProperty("loomwright.root"));
    private static final Path SITE = ROOT.resolve("releng/org.loomwright.site/target/repository");
    private static final Path PRODUCT = ROOT.resolve("tests/org.loomwright.install.product/target/products")
            .resolve("org.loomwright.install.product/linux/gtk/x86_64");
    private static final String FEATURE = "org.loomwright.feature.feature.group";
    private static final Pattern PLUGIN = Pattern.compile("<plugin id=\"(org\\.loomwright\\.[a-z.]+)\"");

    @TempDir
    Path temporary;

    @Test
    void featureGoesFromTheSiteIntoAProductWithoutItAndRunsThere() throws Exception {
        List<String> ours = bundlesOfTheFeature();
        assertFalse(ours.isEmpty());
        Installation installation = Installation.copy(PRODUCT, temporary.resolve("product"));
        assertEquals(List.of(), present(installation, ours), "the product must not hold our bundles beforehand");

        Installation.Outcome installed = installation.run("-application", "org.eclipse.equinox.p2.director",
                "-repository", SITE.toUri().toString(), "-installIU", FEATURE);
        assertEquals(0, installed.exit(), installed.output());

        Installation.Outcome roots = installation.run("-application", "org.eclipse.equinox.p2.director",
                "-listInstalledRoots");
        assertTrue(roots.output().contains(FEATURE), roots.output());
        assertEquals(ours, present(installation, ours));

        Installation.Outcome probe = installation.run(oneClassOf(ours).toArray(String[]::new));
        assertEquals(0, probe.exit(), probe.output());
        for (String bundle : ours) {
            assertTrue(Pattern.compile("(?m)^bundle " + Pattern.quote(bundle) + " \\S+ (resolved|starting|active)$")
                    .matcher(probe.output()).find(), bundle + " does not resolve:\n" + probe.output());
        }
        for (String wanted : oneClassOf(ours)) {
            assertTrue(probe.output().contains("loaded " + wanted), probe.output());
        }
    }

    @Test
    void installingFromAnEmptySiteFails() throws Exception {
        Installation installation = Installation.copy(PRODUCT, temporary.resolve("product"));
        Path empty = Files.createDirectory(temporary.resolve("empty"));
        Installation.Outcome outcome = installation.run("-application", "org.eclipse.equinox.p2.director",
                "-repository", empty.toUri().toString(), "-installIU", FEATURE);
        assertFalse(outcome.exit() == 0, outcome.output());
    }

    private static List<String> bundlesOfTheFeature() throws IOException {
        Matcher plugin = PLUGIN.matcher(Files.readString(ROOT.resolve("features/org.loomwright.feature/feature.xml")));
        return plugin.results().map(r -> r.group(1)).sorted().toList();
    }

    private static List<String> present(Installation installation, List<String> bundles) throws IOException {
        try (Stream<Path> plugins = Files.list(installation.folder().resolve("plugins"))) {
            List<String> names = plugins.map(p -> p.getFileName().toString().replaceFirst("_.*", ""))
                    .collect(Collectors.toCollection(ArrayList::new));
            return bundles.stream().filter(names::contains).toList();
        }
    }

    /** For each bundle one of its compiled classes, as {@code bundle/class}. */
    private static List<String> oneClassOf(List<String> bundles) throws IOException {
        List<String> wanted = new ArrayList<>();
        for (String bundle : bundles) {
            Path classes = ROOT.resolve("bundles").resolve(bundle).resolve("target/classes");
            try (Stream<Path> files = Files.walk(classes)) {
                wanted.add(bundle + "/" + files.map(f -> classes.relativize(f).toString())
                        .filter(f -> f.endsWith(".class") && !f.endsWith("package-info.class"))
                        .map(f -> f.substring(0, f.length() - ".class".length()).replace('/', '.'))
                        .min(String::compareTo).orElseThrow(() -> new IOException("no class in " + classes)));
            }
        }
        return wanted;
    }
}
