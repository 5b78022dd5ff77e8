// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How a call is spelled. */
class CallTest {

    private static final String WARNED = """
            platform orrin {
                years 1964 .. 1971
            }
            waive: orphan-wire on orrin because "a test"
            """.replace("waive: ", "waive w: ");

    @TempDir
    private Path folder;

    @Test
    void noCommandIsRefusedWithTheWayToHelp() {
        Call.in(folder).isRefused("no command; see 'loomwright --help'");
    }

    @Test
    void aMisspeltCommandIsCorrected() {
        Call.in(folder, "chek", "p").isRefused("unknown command 'chek'; did you mean check");
        Call.in(folder, "porve").isRefused("unknown command 'porve'; did you mean prove");
    }

    @Test
    void aMisspeltOptionIsCorrected() {
        Call.in(folder, "check", "--inherted", "p").isRefused("unknown option '--inherted'; did you mean --inherited?");
    }

    @ParameterizedTest
    @ValueSource(strings = {"prove", "check", "fit", "sheets", "format"})
    void aMissingPathIsSaid(String command) {
        Call.in(folder, command).isRefused("see 'loomwright " + command + " --help'");
    }

    @Test
    void wrongValuesOfOptionsAreSaid() {
        Call.in(folder, "check", "p", "--format", "xml")
                .isRefused("--format is text, json, sarif or junit, not 'xml'");
        Call.in(folder, "fit", "p", "--format", "sarif").isRefused("--format is text or json, not 'sarif'");
        Call.in(folder, "check", "p", "--fail-on", "nothing")
                .isRefused("--fail-on is error, warning, note or never, not 'nothing'");
        Call.in(folder, "prove", "p", "--fail-on", "never")
                .isRefused("--fail-on is error, warning or note, not 'never'");
        Call.in(folder, "check", "p", "--today", "tomorrow")
                .isRefused("--today is a day like 2027-06-30, not 'tomorrow'");
        Call.in(folder, "check", "p", "--format").isRefused("--format");
        Call.in(folder, "prove", "p", "q").isRefused("one argument too many 'q'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"prove", "check", "fit", "sheets", "format"})
    void everyCommandHasHelp(String command) {
        Call help = Call.in(folder, command, "--help").isFine();
        assertTrue(help.out().startsWith("Usage: loomwright " + command), help.out());
        assertTrue(help.out().contains("Exit code:"), help.out());
        assertTrue(help.out().lines().allMatch(line -> line.length() <= 100), help.out());
        assertTrue(Call.in(folder, "--help").isFine().out().contains("  " + command + " "));
        assertEquals(help, Call.in(folder, command, "-h"));
        assertEquals(Call.in(folder, "--help"), Call.in(folder, "help"));
    }

    @Test
    void theVersionIsOneLine() {
        assertTrue(Call.in(folder, "--version").isFine().out().matches("loomwright \\S+\\R"));
    }

    @Test
    void theThresholdDecidesTheExitCodeOnly() throws IOException {
        Files.writeString(folder.resolve("w.loom"), WARNED);
        Call call = Call.in(folder, "check", "w.loom").finds("waiver-unused", "w.loom:4:1");
        assertEquals(call.out(), Call.in(folder, "check", "w.loom", "--fail-on", "error").isFine().out());
        assertEquals(Exit.FINDINGS, Call.in(folder, "check", "w.loom", "--fail-on", "note").code());
    }

    @Test
    void quietLeavesTheFindings() throws IOException {
        Files.writeString(folder.resolve("w.loom"), WARNED);
        Call loud = Call.in(folder, "check", "w.loom");
        Call quiet = Call.in(folder, "check", "w.loom", "--quiet").finds("waiver-unused", "w.loom:4:1");
        assertEquals("w: 1 warning in 1 file\n", loud.out().substring(quiet.out().length()));
    }

    @Test
    void waiversAreJudgedOnTheDayThatIsAskedFor() throws IOException {
        Files.writeString(folder.resolve("w.loom"), WARNED.replace("\"a test\"", "\"a test\" until 2026-03-31"));
        Call.in(folder, "check", "w.loom", "--today", "2026-03-31").finds("waiver-unused", "w.loom:4:1");
        Call.in(folder, "check", "w.loom", "--today", "2026-04-01").finds("waiver-expired", "w.loom:4:1");
    }

    @Test
    void coloursAreForTerminalsThatWantThem() throws IOException {
        Files.writeString(folder.resolve("w.loom"), WARNED);
        assertTrue(terminal(Map.of()).contains("\u001b[1;33mwarning[waiver-unused]\u001b[0m"));
        assertFalse(terminal(Map.of("NO_COLOR", "1")).contains("\u001b"));
        assertFalse(terminal(Map.of("TERM", "dumb")).contains("\u001b"));
        String plain = Call.in(folder, "check", "w.loom").out();
        assertEquals(plain, terminal(Map.of("NO_COLOR", "1")));
        assertEquals(plain, terminal(Map.of()).replaceAll("\u001b\\[[0-9;]*m", ""));
    }

    private String terminal(Map<String, String> environment) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Main.run(new String[] {"check", "w.loom"}, new Door(new PrintStream(out, false, StandardCharsets.UTF_8),
                new PrintStream(new ByteArrayOutputStream()), folder, environment, true, false));
        return out.toString(StandardCharsets.UTF_8);
    }
}
