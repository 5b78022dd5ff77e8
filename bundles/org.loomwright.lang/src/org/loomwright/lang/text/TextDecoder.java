// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.text;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * Turns the bytes of a file into text, or says why they are none. UTF-8 only; a byte order mark is dropped, line ends
 * may be LF or CR LF. O(bytes).
 */
public final class TextDecoder {
    /** Larger files are refused: 8 MiB. */
    public static final int MOST_BYTES = 8 * 1024 * 1024;

    private static final String AS_UTF8 = "save it as UTF-8 text";

    /**
     * The outcome.
     *
     * @param text the text; empty when the bytes are no text
     * @param fault what is wrong; empty when the text can be read
     */
    public record Decoded(String text, Optional<Fault> fault) {
    }

    /** Why bytes are refused. Its message names the place in the bytes. */
    public record Fault(String code, String message, String advice) {
    }

    private TextDecoder() {
    }

    public static Decoded decode(byte[] bytes) {
        if (bytes.length > MOST_BYTES) {
            return refused("file-too-big", "the file has " + bytes.length + " bytes; files over " + MOST_BYTES
                    + " bytes are not read", "divide it: a drawing, a harness or a catalogue has a file of its own");
        }
        String utf16 = utf16(bytes);
        if (!utf16.isEmpty()) {
            return refused("not-text", "the file is " + utf16 + " text, not UTF-8", AS_UTF8);
        }
        int start = startsWith(bytes, 0xEF, 0xBB, 0xBF) ? 3 : 0;
        String text = new String(bytes, start, bytes.length - start, StandardCharsets.UTF_8);
        Optional<Fault> fault = binary(bytes, start);
        if (fault.isEmpty() && text.indexOf('\uFFFD') >= 0) {
            fault = malformed(bytes, start);
        }
        if (fault.isEmpty() && text.indexOf('\n') < 0 && text.strip().indexOf('\r') >= 0) {
            fault = Optional.of(new Fault("not-text", "the lines of the file end with CR alone",
                    "save it with the line ends LF or CR LF"));
        }
        return new Decoded(fault.isEmpty() ? text : "", fault);
    }

    private static Decoded refused(String code, String message, String advice) {
        return new Decoded("", Optional.of(new Fault(code, message, advice)));
    }

    private static boolean startsWith(byte[] bytes, int... head) {
        if (bytes.length < head.length) {
            return false;
        }
        for (int i = 0; i < head.length; i++) {
            if ((bytes[i] & 0xFF) != head[i]) {
                return false;
            }
        }
        return true;
    }

    /** Names the encoding when the bytes are UTF-16 or UTF-32, by its mark or by a zero in every other byte. */
    private static String utf16(byte[] bytes) {
        if (startsWith(bytes, 0xFF, 0xFE, 0, 0) || startsWith(bytes, 0, 0, 0xFE, 0xFF)) {
            return "UTF-32";
        }
        if (startsWith(bytes, 0xFF, 0xFE) || startsWith(bytes, 0xFE, 0xFF)) {
            return "UTF-16";
        }
        int even = 0;
        int odd = 0;
        int sample = Math.min(bytes.length, 4096);
        for (int i = 0; i < sample; i++) {
            if (bytes[i] == 0) {
                even += 1 - i % 2;
                odd += i % 2;
            }
        }
        int many = sample * 2 / 5;
        return sample >= 4 && (even > many && odd * 20 < even || odd > many && even * 20 < odd) ? "UTF-16" : "";
    }

    private static Optional<Fault> binary(byte[] bytes, int start) {
        int controls = 0;
        for (int i = start; i < bytes.length; i++) {
            byte b = bytes[i];
            if (b == 0) {
                return Optional.of(new Fault("not-text", "the file is no text: byte " + i
                        + " (line " + line(bytes, i) + ") is zero", AS_UTF8));
            }
            if (b > 0 && b < ' ' && b != '\n' && b != '\r' && b != '\t' && b != '\f' || b == 0x7F) {
                controls++;
            }
        }
        return controls > 4 && controls * 50L > bytes.length
                ? Optional.of(new Fault("not-text", "the file is no text: " + controls + " of its bytes are control "
                        + "characters", AS_UTF8))
                : Optional.empty();
    }

    private static Optional<Fault> malformed(byte[] bytes, int start) {
        ByteBuffer in = ByteBuffer.wrap(bytes, start, bytes.length - start);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        CoderResult result = StandardCharsets.UTF_8.newDecoder().decode(in, out, true);
        if (!result.isError()) {
            return Optional.empty();
        }
        int at = in.position();
        return Optional.of(new Fault("not-text", "byte " + at + " (line " + line(bytes, at)
                + ") is not UTF-8", AS_UTF8));
    }

    private static int line(byte[] bytes, int offset) {
        int line = 1;
        for (int i = 0; i < offset; i++) {
            line += bytes[i] == '\n' ? 1 : 0;
        }
        return line;
    }
}
