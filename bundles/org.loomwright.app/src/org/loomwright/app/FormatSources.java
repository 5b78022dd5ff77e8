// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.Loader;
import org.loomwright.harness.Problem;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.text.TextDecoder;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** Brings sources into their canonical form. Writes nothing. */
public final class FormatSources {

    private FormatSources() {
    }

    /**
     * The outcome.
     *
     * @param sources one for each input; those that are no text have a problem
     * @param changed names of those whose canonical form differs from their bytes, in the order of the inputs
     * @param forms   the canonical forms of these, by name
     */
    public record Formatted(List<Source> sources, List<String> changed, Map<String, byte[]> forms) {
    }

    /** Formats sources with some threads; the result does not depend on their number. */
    public static Formatted format(List<Input> inputs, int threads, Cancel cancel, Progress progress) {
        Map<String, byte[]> forms = new ConcurrentHashMap<>();
        Loader loader = new Loader((name, bytes) -> format(name, bytes, forms), threads);
        List<Source> sources = loader.load(inputs, cancel, progress).sources();
        List<String> changed = new ArrayList<>();
        inputs.stream().map(Input::name).filter(forms::containsKey).forEach(changed::add);
        return new Formatted(sources, changed, forms);
    }

    private static Source format(String name, byte[] bytes, Map<String, byte[]> forms) {
        TextDecoder.Decoded decoded = TextDecoder.decode(bytes);
        List<Problem> problems = decoded.fault().map(fault -> List.of(new Problem(fault.code(),
                new Span(name, 0, 0, 1, 1), fault.message(), fault.advice(), List.of()))).orElse(List.of());
        if (problems.isEmpty()) {
            byte[] form = Formatter.format(decoded.text()).getBytes(StandardCharsets.UTF_8);
            if (!Arrays.equals(form, bytes)) {
                forms.put(name, form);
            }
        }
        return new Source(name, decoded.text(), List.of(), problems);
    }
}
