// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.loomwright.harness.LineIndex;

/** The texts that the client has open, kept up to date by its changes. */
final class Buffers {

    private final Map<String, String> texts = new ConcurrentHashMap<>();

    void open(String uri, String text) {
        texts.put(uri, text);
    }

    void close(String uri) {
        texts.remove(uri);
    }

    /** The text after some changes, each of which counts on the text after the one before; empty if it is not open. */
    Optional<String> change(String uri, List<TextDocumentContentChangeEvent> changes) {
        String text = texts.get(uri);
        if (text == null) {
            return Optional.empty();
        }
        for (TextDocumentContentChangeEvent change : changes) {
            if (change.getRange() == null) {
                text = change.getText();
            } else {
                LineIndex lines = new LineIndex(uri, text);
                int from = Places.offset(lines, change.getRange().getStart());
                int to = Math.max(from, Places.offset(lines, change.getRange().getEnd()));
                text = text.substring(0, from) + change.getText() + text.substring(to);
            }
        }
        texts.put(uri, text);
        return Optional.of(text);
    }
}
