// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.quantity.Spelling;

/**
 * What a wrong name or cavity was probably meant to be: one that is spelt alike but for case and leading zeros, or else
 * the nearest in spelling.
 */
record Nearest(Optional<String> name) {

    static Nearest of(String wrong, Collection<String> names) {
        Optional<String> alike = names.stream().filter(name -> plain(name).equals(plain(wrong))).sorted().findFirst();
        return new Nearest(alike.isPresent() ? alike : Spelling.nearest(wrong, names));
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceFirst("^0+(?=.)", "");
    }

    String advice(String otherwise) {
        return name.map(each -> "did you mean \"" + each + "\"?").orElse(otherwise);
    }

    String title() {
        return "write \"" + name.orElseThrow() + "\"";
    }

    Optional<TextEdit> fix(Span span) {
        return span.equals(Span.NONE) ? Optional.empty() : name.map(each -> new TextEdit(span, each));
    }
}
