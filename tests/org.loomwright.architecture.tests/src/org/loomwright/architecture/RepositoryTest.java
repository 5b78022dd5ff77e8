// SPDX-License-Identifier: EPL-2.0
package org.loomwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What lies where in the repository, and what no file may hold. */
class RepositoryTest {

    private static final Path ROOT = Path.of(System.getProperty("loomwright.root")).normalize();
    private static final Set<String> TOP = Set.of("README.md", "DEVELOPERS.md", "LICENSE", "pom.xml", "bundles",
            "features", "releng", "tests", "docs", "loomwright", "verify");
    private static final Set<String> NOT_OURS = Set.of(".git", "target", "src-gen", "bin", "loomwright-out");
    private static final Pattern ARTIFACT = Pattern.compile("<dependency>\\s*<groupId>([^<]+)</groupId>\\s*"
            + "<artifactId>([^<]+)</artifactId>\\s*<version>([^<$]+)</version>");

    @Test
    void theTopFolderHoldsOnlyWhatBelongsThere() throws IOException {
        try (Stream<Path> entries = Files.list(ROOT)) {
            Set<String> names = new TreeSet<>(entries.map(e -> e.getFileName().toString()).toList());
            names.removeIf(n -> n.startsWith("."));
            names.removeAll(TOP);
            // what the first command of the README writes, and git leaves alone
            names.removeAll(NOT_OURS);
            assertEquals(Set.of(), names);
        }
    }

    @Test
    void noFileNamesTheHostOfAPackageRegistry() throws IOException {
        List<Pattern> hosts = Stream.of(List.of("repo1", "maven"), List.of("repo", "maven", "apache"),
                        List.of("registry", "npmjs"), List.of("deb", "debian"), List.of("central", "sonatype"))
                .map(parts -> Pattern.compile(String.join("\\.", parts))).toList();
        List<String> found = new ArrayList<>();
        int files = 0;
        for (Path file : files()) {
            String text = Files.readString(file, StandardCharsets.ISO_8859_1);
            hosts.stream().filter(h -> h.matcher(text).find())
                    .forEach(h -> found.add(ROOT.relativize(file) + ": " + h));
            files++;
        }
        assertTrue(files > 100, "files not found below " + ROOT);
        assertEquals(List.of(), found);
    }

    @Test
    void theClassPathOutsideOsgiHasTheVersionsOfTheTargetPlatform() throws IOException {
        Map<String, String> target = new TreeMap<>();
        for (String name : List.of("org.loomwright.target.target", "install.target")) {
            versions(ROOT.resolve("releng/org.loomwright.target").resolve(name)).forEach((artifact, version) ->
                    assertNull(target.putIfAbsent(artifact, version), artifact + " stands twice"));
        }
        Map<String, String> plain = versions(ROOT.resolve("pom.xml"));
        // an aggregate without code of its own, and helpers for plain tests only
        plain.remove("org.junit.jupiter:junit-jupiter");
        plain.remove("org.eclipse.xtext:org.eclipse.xtext.testing");
        assertTrue(plain.size() > 15, plain.toString());
        plain.forEach((artifact, version) -> assertEquals(target.get(artifact), version, artifact));
    }

    private static Map<String, String> versions(Path file) throws IOException {
        Map<String, String> versions = new TreeMap<>();
        Matcher artifact = ARTIFACT.matcher(Files.readString(file));
        while (artifact.find()) {
            versions.put(artifact.group(1) + ":" + artifact.group(2), artifact.group(3));
        }
        return versions;
    }

    private static List<Path> files() throws IOException {
        List<Path> files = new ArrayList<>();
        Files.walkFileTree(ROOT, new SimpleFileVisitor<>() {

            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                return NOT_OURS.contains(folder.getFileName().toString()) && !folder.equals(ROOT)
                        ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                if (attributes.isRegularFile() && attributes.size() < 5_000_000) {
                    files.add(file);
                }
                return FileVisitResult.CONTINUE;
            }
        });
        return files;
    }
}
