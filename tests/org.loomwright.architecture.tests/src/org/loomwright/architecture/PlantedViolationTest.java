// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The checks report what they are there for, planted on purpose in a made-up repository. */
class PlantedViolationTest {

    @TempDir
    Path root;

    @Test
    void aRequiredBundleIsReported() throws IOException {
        Bundle bundle = plant("harness",
                "Require-Bundle: org.loomwright.condition;bundle-version=\"[1,2)\",org.loomwright.fit");
        assertEquals(List.of("org.loomwright.harness may not use org.loomwright.fit, but its Require-Bundle names it"),
                check().violations(bundle));
    }

    @Test
    void anImportedPackageIsReported() throws IOException {
        Bundle bundle = plant("harness", "Import-Package: org.logicng.formulas,org.loomwright.quantity");
        assertEquals(List.of("org.loomwright.harness may not use org.logicng.formulas,"
                        + " but its Import-Package names it"),
                check().violations(bundle));
    }

    @Test
    void aBundleOutsideTheListIsReported() throws IOException {
        assertEquals(List.of("org.loomwright.attic does not stand in the list of allowed uses"),
                check().violations(plant("attic", "Bundle-Name: Attic")));
    }

    @Test
    void aClassThatUsesAHigherRoomIsReported() throws IOException {
        Bundle bundle = plant("harness", "Bundle-Name: Harness");
        compile(bundle,
                "org/loomwright/fit/Fit.java",
                "package org.loomwright.fit; public class Fit { public static void go() { } }",
                "org/loomwright/harness/Bad.java",
                "package org.loomwright.harness; class Bad { void use() { org.loomwright.fit.Fit.go(); } }");
        Files.delete(bundle.folder().resolve("target/classes/org/loomwright/fit/Fit.class"));
        assertEquals(List.of("org.loomwright.harness may not use org.loomwright.fit.Fit,"
                        + " but org.loomwright.harness.Bad does"),
                check().violations(bundle));
    }

    @Test
    void aClassThatUsesALibraryInAnAnnotationOrASignatureIsReported() throws IOException {
        Bundle bundle = plant("harness", "Bundle-Name: Harness");
        compile(bundle,
                "third/party/Mark.java", "package third.party; public @interface Mark { }",
                "third/party/Held.java", "package third.party; public class Held { }",
                "org/loomwright/harness/Bad.java", "package org.loomwright.harness; @third.party.Mark class Bad {"
                        + " java.util.List<third.party.Held> held; }");
        Files.delete(bundle.folder().resolve("target/classes/third/party/Mark.class"));
        Files.delete(bundle.folder().resolve("target/classes/third/party/Held.class"));
        assertEquals(List.of("org.loomwright.harness may not use third.party.Held, but org.loomwright.harness.Bad does",
                "org.loomwright.harness may not use third.party.Mark, but org.loomwright.harness.Bad does"),
                check().violations(bundle));
    }

    @Test
    void aThirdPartyTypeInAPublicApiIsReported() throws IOException {
        Bundle bundle = plant("condition", "Bundle-Name: Condition");
        compile(bundle,
                "org/logicng/Formula.java", "package org.logicng; public class Formula { }",
                "org/loomwright/condition/Shown.java", "package org.loomwright.condition; public class Shown {"
                        + " public java.util.List<org.logicng.Formula> formulas; }",
                "org/loomwright/condition/Hidden.java", "package org.loomwright.condition; public class Hidden {"
                        + " private org.logicng.Formula formula; void use(org.logicng.Formula f) { formula = f; } }",
                "org/loomwright/condition/internal/Inside.java", "package org.loomwright.condition.internal;"
                        + " public class Inside { public org.logicng.Formula formula; }");
        Files.delete(bundle.folder().resolve("target/classes/org/logicng/Formula.class"));
        assertEquals(List.of("org.loomwright.condition.Shown shows org.logicng.Formula"),
                PublicApi.foreignTypes(bundle));
    }

    private UsesCheck check() throws IOException {
        Path file = root.resolve("uses.txt");
        Files.writeString(file, "quantity\ncondition uses quantity library org.logicng\n"
                + "harness uses condition\nfit uses harness");
        return new UsesCheck(AllowedUses.read(file));
    }

    private Bundle plant(String room, String header) throws IOException {
        Bundle bundle = new Bundle(root.resolve("bundles/org.loomwright." + room));
        Path manifest = bundle.folder().resolve("META-INF/MANIFEST.MF");
        Files.createDirectories(manifest.getParent());
        Files.writeString(manifest, "Manifest-Version: 1.0\n" + header.replaceAll("(.{60})", "$1\n ") + "\n");
        return bundle;
    }

    private static void compile(Bundle bundle, String... namesAndTexts) throws IOException {
        Path classes = Files.createDirectories(bundle.folder().resolve("target/classes"));
        List<String> arguments = new ArrayList<>(List.of("-d", classes.toString()));
        for (int i = 0; i < namesAndTexts.length; i += 2) {
            Path source = bundle.folder().resolve("planted").resolve(namesAndTexts[i]);
            Files.createDirectories(source.getParent());
            Files.writeString(source, namesAndTexts[i + 1]);
            arguments.add(source.toString());
        }
        int result = ToolProvider.getSystemJavaCompiler().run(null, null, null, arguments.toArray(String[]::new));
        assertEquals(0, result);
    }
}
