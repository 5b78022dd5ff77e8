// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** A fault of ours: one line for the user, and a file with the details for whoever mends it. */
final class Fault {

    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss-SSS", Locale.ROOT).withZone(ZoneOffset.UTC);

    private Fault() {
    }

    /** Says it in one line. Never throws. */
    static void report(Throwable fault, String[] args, Door door) {
        String what = fault instanceof OutOfMemoryError
                ? "out of memory; give the Java virtual machine more, for example with JAVA_TOOL_OPTIONS=-Xmx4g"
                : "a fault of ours (" + fault.getClass().getSimpleName() + ")";
        String where;
        try {
            where = "; details are in " + write(details(fault, args), door);
        } catch (IOException | RuntimeException e) {
            where = "; its details could not be written to a file";
        }
        door.err().println("loomwright: " + what + where);
        door.err().flush();
    }

    private static String details(Throwable fault, String[] args) {
        StringWriter text = new StringWriter();
        PrintWriter print = new PrintWriter(text);
        print.println("loomwright " + Version.text());
        print.println("arguments: " + List.of(args));
        print.println("java: " + System.getProperty("java.vm.name") + " " + System.getProperty("java.vm.version"));
        print.println("system: " + System.getProperty("os.name") + " " + System.getProperty("os.arch"));
        fault.printStackTrace(print);
        print.flush();
        return text.toString();
    }

    private static Path write(String details, Door door) throws IOException {
        String name = "fault-" + STAMP.format(Instant.now()) + "-" + ProcessHandle.current().pid() + ".txt";
        try {
            return writeIn(cache(door), name, details);
        } catch (IOException | RuntimeException e) {
            return writeIn(Path.of(System.getProperty("java.io.tmpdir")), "loomwright-" + name, details);
        }
    }

    private static Path cache(Door door) {
        String cache = door.environment().getOrDefault("XDG_CACHE_HOME", "");
        return (cache.isEmpty() ? Path.of(System.getProperty("user.home"), ".cache") : Path.of(cache))
                .resolve("loomwright");
    }

    private static Path writeIn(Path folder, String name, String text) throws IOException {
        Files.createDirectories(folder);
        return Files.writeString(folder.resolve(name), text, StandardOpenOption.CREATE_NEW);
    }
}
