// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.outline;

import java.util.List;
import org.loomwright.harness.Span;
import org.loomwright.ide.names.Symbol;

/**
 * Something in a file.
 *
 * @param kind     what it is
 * @param sort     the same in words: {@code trunk} and {@code branch} are of one kind
 * @param label    what to call it: {@code H1}, {@code 12 Dipped beam}
 * @param detail   more about it, a few words; may be empty
 * @param name     where its name stands
 * @param whole    all of it, its block included
 * @param children what is in it, in order
 */
public record OutlineItem(Symbol.Kind kind, String sort, String label, String detail, Span name, Span whole,
        List<OutlineItem> children) {

    public OutlineItem {
        children = List.copyOf(children);
    }
}
