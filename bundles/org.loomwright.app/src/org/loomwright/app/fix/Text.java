// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fix;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.TextEdit;
import org.loomwright.lang.text.TextDecoder;

/**
 * The text of a file while it is mended, with what its bytes are beside the text: a byte order mark, and the sort of
 * its line ends.
 *
 * @param bytes the bytes as they were read
 * @param mark  whether they begin with a byte order mark
 * @param crlf  whether its lines end with CR LF
 * @param text  the text as it is now, line ends as written
 */
record Text(byte[] bytes, boolean mark, boolean crlf, String text) {

    private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    /** Reads bytes; empty when they are no text, or would not be the same after they were written again. */
    static Optional<Text> of(byte[] bytes) {
        TextDecoder.Decoded decoded = TextDecoder.decode(bytes);
        boolean mark = bytes.length >= MARK.length && Arrays.equals(bytes, 0, MARK.length, MARK, 0, MARK.length);
        Text text = new Text(bytes, mark, decoded.text().contains("\r\n"), decoded.text());
        return decoded.fault().isEmpty() && Arrays.equals(bytes, text.encoded()) ? Optional.of(text)
                : Optional.empty();
    }

    /** The text after some edits that do not overlap; new lines end as the others do. */
    Text after(List<TextEdit> edits) {
        List<TextEdit> suited = !crlf ? edits : edits.stream().map(edit -> new TextEdit(edit.span(),
                edit.text().replace("\r\n", "\n").replace("\n", "\r\n"))).toList();
        return new Text(bytes, mark, crlf, TextEdit.apply(text, suited));
    }

    /** The bytes of the text as it is now. */
    byte[] encoded() {
        byte[] plain = text.getBytes(StandardCharsets.UTF_8);
        if (!mark) {
            return plain;
        }
        byte[] marked = Arrays.copyOf(MARK, MARK.length + plain.length);
        System.arraycopy(plain, 0, marked, MARK.length, plain.length);
        return marked;
    }

    /** Whether it differs from what was read. */
    boolean isChanged() {
        return !Arrays.equals(bytes, encoded());
    }

    /** The text as it was read. */
    String before() {
        return TextDecoder.decode(bytes).text();
    }
}
