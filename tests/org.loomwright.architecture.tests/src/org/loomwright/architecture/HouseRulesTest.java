// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules of the house that a program can check. */
class HouseRulesTest {

    private static final Path ROOT = Path.of(System.getProperty("loomwright.root")).normalize();
    private static final int LONGEST_CLASS = 450;
    private static final int LONGEST_LINE = 120;

    @Test
    void noSourceFileIsTooLong() throws IOException {
        List<String> tooLong = new ArrayList<>();
        for (Path source : sources()) {
            int lines = Files.readAllLines(source).size();
            if (lines > LONGEST_CLASS) {
                tooLong.add(ROOT.relativize(source) + " has " + lines + " lines");
            }
        }
        assertEquals(List.of(), tooLong);
    }

    @Test
    void everySourceFileNamesItsLicence() throws IOException {
        List<String> without = new ArrayList<>();
        for (Path source : sources()) {
            if (!Files.readString(source).startsWith("// SPDX-License-Identifier: EPL-2.0\n")) {
                without.add(ROOT.relativize(source).toString());
            }
        }
        assertEquals(List.of(), without);
    }

    @Test
    void noLineIsTooLongAndNoneHoldsATab() throws IOException {
        List<String> found = new ArrayList<>();
        for (Path source : sources()) {
            List<String> lines = Files.readAllLines(source);
            for (int i = 0; i < lines.size(); i++) {
                if (lines.get(i).length() > LONGEST_LINE || lines.get(i).indexOf('\t') >= 0) {
                    found.add(ROOT.relativize(source) + ":" + (i + 1));
                }
            }
        }
        assertEquals(List.of(), found);
    }

    @Test
    void everyPackageSaysWhatItIsFor() throws IOException {
        List<String> without = new ArrayList<>();
        for (Bundle bundle : Bundle.of(ROOT)) {
            for (String name : bundle.packages()) {
                Path info = bundle.folder().resolve("src").resolve(name.replace('.', '/')).resolve("package-info.java");
                if (!Files.exists(info) || !Files.readString(info).contains("/**")) {
                    without.add(name);
                }
            }
        }
        assertEquals(List.of(), without);
    }

    @Test
    void everyPackageIsExportedUnlessItIsInternal() throws IOException {
        for (Bundle bundle : Bundle.of(ROOT)) {
            TreeSet<String> shown = new TreeSet<>(bundle.packages());
            shown.removeIf(PublicApi::isInternal);
            TreeSet<String> exported = new TreeSet<>(bundle.header("Export-Package"));
            if (!shown.isEmpty()) { // the model is generated
                assertEquals(shown, exported, bundle.name());
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"condition", "harness", "geometry", "fit", "rules", "compare"})
    void enginesShowNoTypeOfThirdParties(String room) throws IOException {
        Bundle bundle = new Bundle(ROOT.resolve("bundles/org.loomwright." + room));
        assertFalse(bundle.classFiles().isEmpty());
        assertEquals(List.of(), PublicApi.foreignTypes(bundle));
    }

    private static List<Path> sources() throws IOException {
        List<Path> all = new ArrayList<>();
        for (Bundle bundle : Bundle.of(ROOT)) {
            all.addAll(bundle.sources());
        }
        assertFalse(all.isEmpty());
        return all;
    }
}
