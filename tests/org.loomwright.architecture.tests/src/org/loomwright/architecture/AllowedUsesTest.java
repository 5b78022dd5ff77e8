// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Each bundle uses only what {@code releng/allowed-uses.txt} lets it use. */
class AllowedUsesTest {

    private static final Path ROOT = Path.of(System.getProperty("loomwright.root")).normalize();

    @TestFactory
    Stream<DynamicTest> bundlesUseOnlyWhatTheyMay() throws IOException {
        UsesCheck check = new UsesCheck(AllowedUses.read(ROOT.resolve("releng/allowed-uses.txt")));
        List<Bundle> bundles = Bundle.of(ROOT);
        assertTrue(bundles.size() >= 10, "bundles not found below " + ROOT);
        return bundles.stream().map(bundle -> DynamicTest.dynamicTest(bundle.name(), () -> {
            assertFalse(bundle.classFiles().isEmpty(), "not compiled: " + bundle.folder());
            assertEquals(List.of(), check.violations(bundle));
        }));
    }

    @Test
    void usesArePassedOnButNotThoseForABundleAlone(@TempDir Path folder) throws IOException {
        AllowedUses uses = read(folder,
                "low\nmiddle uses low library third.party\nodd\nhigh uses middle alone odd\ntop uses high");
        assertEquals(Set.of("low", "middle", "odd", "high"), uses.reachable("high"));
        assertEquals(Set.of("low", "middle", "high", "top"), uses.reachable("top"));
        assertTrue(uses.allows("middle", "third.party.inside"));
        assertFalse(uses.allows("middle", "third.partyline"));
        assertFalse(uses.allows("high", "third.party"));
        assertTrue(uses.allows("top", "org.loomwright.low.internal"));
        assertFalse(uses.allows("low", "org.loomwright.lower"));
        assertTrue(uses.allows("low", "java.util"));
        assertFalse(uses.allows("low", "java.awt.geom"));
        assertFalse(uses.allows("low", "javax.swing"));
    }

    @Test
    void usesThatPointBackAreRefused(@TempDir Path folder) {
        assertThrows(IllegalArgumentException.class, () -> read(folder, "low uses high\nhigh"));
    }

    private static AllowedUses read(Path folder, String text) throws IOException {
        return AllowedUses.read(Files.writeString(folder.resolve("uses.txt"), text));
    }
}
