// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules.wiring;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;
import org.loomwright.quantity.Spelling;
import org.loomwright.rules.Draft;

/**
 * What a wrong name or cavity was probably meant to be: one that is spelt alike but for case and leading zeros, or else
 * the nearest in spelling. Certain when nothing else can have been meant.
 */
record Nearest(Optional<String> name, boolean certain) {

    static Nearest of(String wrong, Collection<String> names) {
        List<String> alike = names.stream().filter(name -> plain(name).equals(plain(wrong))).distinct().sorted()
                .toList();
        Optional<String> name = alike.stream().findFirst().or(() -> Spelling.nearest(wrong, names));
        return new Nearest(name, alike.size() == 1
                || alike.isEmpty() && name.filter(each -> Spelling.isSlip(wrong, each)).isPresent());
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceFirst("^0+(?=.)", "");
    }

    String advice(String otherwise) {
        return name.map(each -> "did you mean \"" + each + "\"?").orElse(otherwise);
    }

    private String title() {
        return "write \"" + name.orElseThrow() + "\"";
    }

    /** Offers the name in place of what stands in a span. */
    void offer(Draft draft, Span span) {
        if (name.isPresent() && !span.equals(Span.NONE)) {
            TextEdit edit = new TextEdit(span, name.get());
            if (certain) {
                draft.fix(title(), edit);
            } else {
                draft.guess(title(), edit);
            }
        }
    }
}
