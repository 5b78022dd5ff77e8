// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import com.google.inject.Injector;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;

/** The sample files, and one reader for all tests. */
public final class Corpus {
    public static final List<String> FILES = List.of("platform.loom", "catalogue.loom", "drawing.loom", "harness.loom",
            "bare.loom");

    private static final class Holder {
        static final Injector INJECTOR = new LoomStandaloneSetup().createInjectorAndDoEMFRegistration();
        static final LoomReader READER = LoomReader.create();
    }

    private Corpus() {
    }

    public static Injector injector() {
        return Holder.INJECTOR;
    }

    public static LoomReader reader() {
        return Holder.READER;
    }

    public static String text(String name) {
        return resource("corpus/" + name);
    }

    public static String resource(String name) {
        try (InputStream in = Corpus.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static Source read(String text) {
        return reader().read("a.loom", text.getBytes(StandardCharsets.UTF_8));
    }

    /** Returns a problem as a line: place, length, code and message. */
    public static String shown(Problem problem) {
        return problem.span().line() + ":" + problem.span().column() + "+" + problem.span().length() + " "
                + problem.code() + ": " + problem.message();
    }

    public static List<String> problems(String text) {
        return read(text).problems().stream().map(Corpus::shown).toList();
    }
}
