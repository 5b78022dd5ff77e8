// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How {@code matrix} is called. */
class MatrixCallTest {

    private static final String YEARS = """
            platform orrin {
                years 1964 .. 1966
                position front
                place bulkhead
                place lamp
            }
            drawing late of orrin fills front when year = 1966 {
                datum bulkhead
                branch b1 from bulkhead to lamp 10 in
                connector H1 on b1
                circuit 1 RD {
                    wire a 18 ga from J1:1 to H1:1
                }
                connector J1 at bulkhead
            }
            drawing early of orrin fills front when year <= 1965 {
                datum bulkhead
                branch b1 from bulkhead to lamp 254 mm
                connector H1 on b1
                circuit 7 RD {
                    wire a 16 ga from J1:1 to H1:1
                }
                connector J1 at bulkhead
            }
            """;

    @TempDir
    private Path folder;

    private Call call(String... args) throws Exception {
        Files.writeString(folder.resolve("years.loom"), YEARS);
        return Call.in(folder, args);
    }

    @Test
    void earlierYearsStandFirst() throws Exception {
        String out = call("matrix", ".").isFine().out();
        assertTrue(out.contains("circuits       early  late\n"), out);
        assertTrue(out.contains("7              7      1\n"), out);
        assertTrue(out.contains("places, equal in all: lamp\n"), out);
        assertTrue(out.contains("early - late  1 circuit\n"), out);
    }

    @Test
    void onlyDifferencesOfOneSectionAreShownOnRequest() throws Exception {
        String out = call("matrix", ".", "--rows", "circuits", "--only", "differences").isFine().out();
        assertTrue(out.contains("16 ga"), out);
        assertFalse(out.contains("colour") || out.contains("places"), out);
    }

    @Test
    void namedDrawingsStandAsNamed() throws Exception {
        String out = call("matrix", ".", "late", "early", "--format", "csv").isFine().out();
        assertTrue(out.startsWith("section,element,part,fact,late,early,differs,"), out);
    }

    @Test
    void wrongWordsAreRefused() throws Exception {
        call("matrix").isRefused("PROJECT");
        call("matrix", ".", "--rows", "wires").isRefused("--rows is circuits, connectors, devices or places");
        call("matrix", ".", "--only", "lengths").isRefused("--only is differences");
        call("matrix", ".", "--format", "pdf").isRefused("--format is text, csv or html");
        call("matrix", ".", "early", "late", "--position", "front").isRefused("not both");
        call("matrix", ".", "early").isRefused("at least two");
        call("matrix", ".", "--position", "rear").isRefused("no drawing fills the position 'rear'");
    }

    @Test
    void aHalfReadSourceIsSaidSo() throws Exception {
        call("matrix", ".");
        Files.writeString(folder.resolve("years.loom"), YEARS.replace("16 ga", "16 gna"));
        assertTrue(Call.in(folder, "matrix", ".").isFine().out().endsWith(
                "the text has errors: what could not be read is left out of this\n"));
    }
}
