// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How {@code plan} is called. */
class PlanCallTest {

    private static final String CARS = """
            platform orrin {
                years 1964 .. 1966
                position front
                place bulkhead
                place lamp
            }
            drawing early of orrin fills front {
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 200 mm
            }
            """;
    private static final String OURS = """
            // ours
            harness ours of orrin fills front {
                covers early
                datum bulkhead
                trunk main {
                    breakout wing at unknown  // to be found
                }
                branch b1 from wing to lamp
            }
            """;

    private static final String LAMP = """
            drawing wired of orrin {
                datum bulkhead
                trunk main {
                    breakout wing at 500 mm
                }
                branch b1 from wing to lamp 200 mm
                connector J1 at bulkhead
                connector C1 on b1
                circuit 12 RD {
                    wire a 1 mm2 from J1:1 to C1:1
                }
            }
            harness theirs of orrin {
                covers wired
                datum bulkhead
                trunk main {
                    breakout wing at unknown
                }
                branch b1 from wing to lamp
            }
            """;

    @TempDir
    private Path folder;

    private Call call(String harness, String... args) throws Exception {
        Files.writeString(folder.resolve("cars.loom"), CARS);
        Files.writeString(folder.resolve("ours.loom"), harness);
        return Call.in(folder, args);
    }

    @Test
    void thePlanIsWrittenWhereItIsToldAndNowhereElse() throws Exception {
        String out = call(OURS, "plan", ".", "--to", "planned").isFine().out();
        assertTrue(out.startsWith("ours planned: 1 drawing, 1 vehicle geometry\n"), out);
        assertTrue(out.endsWith("\nwrote planned/ours.loom\n"), out);
        assertEquals(OURS, Files.readString(folder.resolve("ours.loom")));
        assertEquals(OURS.replace("unknown", "500 mm").replace("to lamp", "to lamp 205 mm"),
                Files.readString(folder.resolve("planned/ours.loom")));
        assertFalse(Files.exists(folder.resolve("planned/cars.loom")));
    }

    @Test
    void aSourceIsNeverWrittenOver() throws Exception {
        call(OURS, "plan", ".", "--to", ".").isRefused("will not write over what is there");
        assertEquals(OURS, Files.readString(folder.resolve("ours.loom")));
    }

    @Test
    void nothingIsLeftToPlan() throws Exception {
        String known = OURS.replace("unknown", "500 mm").replace("to lamp", "to lamp 205 mm");
        call(known, "plan", ".").isRefused("no harness of ");
        assertTrue(call(known, "plan", ".", "ours").isFine().out().contains("station wing     500        =     early"));
    }

    @Test
    void namesAndCoversThatAreNot() throws Exception {
        call(OURS, "plan", ".", "theirs").isRefused("has no harness theirs");
        call(OURS.replace("    covers early\n", ""), "plan", ".").isRefused("harness ours covers no drawing");
    }

    @Test
    void timeIsAWholeNumberOfSeconds() throws Exception {
        call(OURS, "plan", ".", "--seconds", "soon").isRefused("--seconds takes a whole number of seconds");
        call(OURS, "plan", ".", "--seconds", "-1").isRefused("--seconds takes a whole number of seconds");
        assertTrue(call(OURS, "plan", ".", "--seconds", "60").isFine().out().contains("each proved the least"));
    }

    @Test
    void whatDrivesItIsToldWhenAsked() throws Exception {
        assertTrue(call(OURS, "plan", ".", "--what-if").isFine().out().contains("without early"));
        assertFalse(call(OURS, "plan", ".").isFine().out().contains("without early"));
        String page = call(OURS, "plan", ".", "--what-if", "--format", "html").isFine().out();
        assertTrue(page.contains("<caption>What drives it, planned anew each time</caption>"), page);
        assertTrue(page.contains("<tr><th scope=\"row\">without early</th><td>"), page);
        assertFalse(call(OURS, "plan", ".", "--format", "html").isFine().out().contains("What drives it"));
    }

    @Test
    void aNewHarnessIsDraftedAndWritten() throws Exception {
        String out = call(OURS, "plan", ".", "--covers", "early", "--name", "fresh", "--to", "planned").isFine().out();
        assertTrue(out.startsWith("fresh planned: 1 drawing, 1 vehicle geometry\n"), out);
        assertTrue(out.contains("what fresh takes over, where its drawings differ:\n  nothing"), out);
        assertTrue(out.endsWith("\nwrote planned/fresh.loom\n"), out);
        assertTrue(Files.readString(folder.resolve("planned/fresh.loom")).contains("harness fresh of orrin fills front"
                + " {\n    covers early\n\n    datum bulkhead\n\n    trunk main {\n        breakout wing at 500 mm\n"
                + "    }\n"
                + "    branch b1 from wing to lamp 205 mm\n"));
        assertTrue(call(OURS, "plan", ".", "--covers", "early", "--format", "json").isFine().out()
                .contains("\"takenOver\": []"));
    }

    /** A draft that nobody can plan as it stands is written all the same, with what is open. */
    @Test
    void aDraftWithoutAPlanIsWrittenAsItIs() throws Exception {
        String apart = OURS + CARS.substring(CARS.indexOf("drawing early")).replace("early", "late")
                .replace("500 mm", "2500 mm");
        Call call = call(apart, "plan", ".", "--covers", "early,late", "--name", "fresh", "--to", "planned");
        assertTrue(call.out().startsWith("fresh: no harness serves all its drawings\n"), call.out());
        assertTrue(Files.readString(folder.resolve("planned/fresh.loom")).contains("breakout wing at unknown\n"));
    }

    @Test
    void draftsThatAreCalledWrongly() throws Exception {
        call(OURS, "plan", ".", "--covers", "late").isRefused("the project has no drawing late");
        call(OURS, "plan", ".", "--covers", ",").isRefused("--covers names no drawing");
        call(OURS, "plan", ".", "--covers", "ours").isRefused("ours is a harness; a harness covers drawings");
        call(OURS, "plan", ".", "--covers", "early", "--name", "ours").isRefused("something is called ours already");
        call(OURS, "plan", ".", "--covers", "early", "--name", "1 x").isRefused("--name takes letters, digits and _");
        call(OURS, "plan", ".", "--name", "x").isRefused("--name is for a new harness");
        call(OURS, "plan", ".", "ours", "--covers", "early").isRefused("--covers makes a new harness");
        call(OURS, "plan", ".", "--covers", "early", "--keep").isRefused("--keep is for a harness that is there");
        call(OURS, "plan", ".", "--adaptor", "early:J1").isRefused("--adaptor takes DRAWING:CONNECTOR");
        call(OURS, "plan", ".", "--adaptor", "early:J1,early:J2").isRefused("early has no connector J1");
        call(OURS, "plan", ".", "--adaptor", "a:b,c:d", "--covers", "early")
                .isRefused("--covers and --adaptor make two");
    }

    @Test
    void whatIsThereIsKeptWhenAsked() throws Exception {
        String longer = OURS.replace("unknown", "500 mm").replace("to lamp", "to lamp 230 mm");
        assertTrue(call(longer, "plan", ".", "ours", "--keep").isFine().out()
                .contains("branch b1        230        =     early"));
        assertTrue(call(longer, "plan", ".", "ours").isFine().out()
                .contains("branch b1        230      205     early"));
    }

    @Test
    void whichVehiclesTakeWhatIsToldInWords() throws Exception {
        String out = call(OURS, "plan", ".").isFine().out();
        assertTrue(out.contains("\nwhich vehicles take what\n"
                + "  early (every vehicle): ours\n"), out);
        String late = "drawing late of orrin fills front when year = 1964 and year = 1966 {\n    datum bulkhead\n}\n";
        assertTrue(call(OURS.replace("covers early", "covers early, late") + late, "plan", ".").out().contains(
                "  late (none): not covered, because no vehicle has both the drawing and the harness\n"));
        assertTrue(call(OURS + LAMP, "plan", ".", "ours").out().contains("  early (every vehicle): ours\n"));
    }

    @Test
    void whatADrawingConnectsIsTakenOverUnlessItIsToldOtherwise() throws Exception {
        String out = call(OURS + LAMP, "plan", ".", "theirs", "--to", "planned").out();
        assertTrue(out.contains("\nwhat theirs lacks of its drawings:\n"), out);
        String text = Files.readString(folder.resolve("planned/ours.loom"));
        assertTrue(text.contains("        // Taken over from wired.\n        wire a 1 mm2 from J1:1 to C1:1\n")
                || text.contains("        wire a 1 mm2 from J1:1 to C1:1\n"), text);
        String plain = call(OURS + LAMP, "plan", ".", "theirs", "--lengths-only").out();
        assertFalse(plain.contains("lacks of its drawings"), plain);
        call(OURS, "plan", ".", "--covers", "early", "--lengths-only").isRefused("--lengths-only is for a harness");
    }

    @Test
    void aPageStandsAlone() throws Exception {
        String page = call(OURS, "plan", ".", "--format", "html").isFine().out();
        assertTrue(page.startsWith("<!DOCTYPE html>") && page.endsWith("</html>\n"), page);
    }

    @Test
    void machinesGetJson() throws Exception {
        String out = call(OURS, "plan", ".", "--format", "json").isFine().out();
        assertTrue(out.contains("\"nanometres\": 205000000"), out);
        assertTrue(out.contains("\"takes\": \"ours\""), out);
        assertFalse(out.contains("\"leastCopper\""), out);
        String whatIf = call(OURS, "plan", ".", "--what-if", "--format", "json").isFine().out();
        assertTrue(whatIf.contains("\"leastCopper\": {\n        \"excessNm\": "), whatIf);
    }
}
