// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fix;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/** The stretches of text that the fixes of one round change. A stretch that is taken waits for the next round. */
final class Taken {

    private final Map<String, TreeMap<Integer, Integer>> stretches = new HashMap<>();

    /** Takes the stretches of some edits, if all of them are free. */
    boolean take(List<TextEdit> edits) {
        if (!edits.stream().map(TextEdit::span).allMatch(this::isFree)) {
            return false;
        }
        edits.forEach(edit -> of(edit.span()).put(edit.span().offset(), edit.span().end()));
        return true;
    }

    private boolean isFree(Span span) {
        TreeMap<Integer, Integer> taken = of(span);
        Map.Entry<Integer, Integer> before = taken.floorEntry(span.offset());
        if (before != null && (before.getKey() == span.offset() || before.getValue() > span.offset())) {
            return false;
        }
        Integer next = taken.ceilingKey(span.offset());
        return next == null || next >= span.end();
    }

    private TreeMap<Integer, Integer> of(Span span) {
        return stretches.computeIfAbsent(span.file(), file -> new TreeMap<>());
    }
}
