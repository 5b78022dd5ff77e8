// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import com.google.gson.stream.JsonReader;
import com.google.gson.stream.MalformedJsonException;
import java.io.ByteArrayInputStream;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * What a client sends, message by message. It ends at the first thing that is no message, and says what that was; so
 * nonsense cannot make the server wait for ever or answer into nowhere. One reader at a time.
 */
final class GuardedInput extends FilterInputStream {

    private static final String LENGTH = "content-length";
    /** Far beyond the largest file that is read at all. */
    private static final int LONGEST_MESSAGE = 1 << 27;
    private static final int LONGEST_HEADER = 1 << 12;

    private byte[] message = {};
    private int at;
    private boolean over;
    private volatile String complaint;

    GuardedInput(InputStream in) {
        super(in);
    }

    /** What was wrong with the input; empty when it just ended. */
    Optional<String> complaint() {
        return Optional.ofNullable(complaint);
    }

    @Override
    public int read() {
        return more() ? message[at++] & 0xFF : -1;
    }

    @Override
    public int read(byte[] bytes, int from, int count) {
        if (!more()) {
            return -1;
        }
        int taken = Math.min(count, message.length - at);
        System.arraycopy(message, at, bytes, from, taken);
        at += taken;
        return taken;
    }

    @Override
    public int available() {
        return message.length - at;
    }

    private boolean more() {
        if (at == message.length && !over) {
            try {
                next();
            } catch (IOException e) {
                end("the connection to the client broke" + (e.getMessage() == null ? ""
                        : " (" + e.getMessage().lines().findFirst().orElse("") + ")"));
            }
        }
        return at < message.length;
    }

    /** Reads one message as a whole. */
    private void next() throws IOException {
        StringBuilder header = new StringBuilder();
        int length = -1;
        while (true) {
            int before = header.length();
            int c = line(header);
            String line = header.substring(before).strip();
            if (c < 0) {
                end(header.isEmpty() ? null : "the input ends in the middle of a message");
                return;
            }
            if (line.isEmpty() && before > 0) {
                break;
            }
            int colon = line.indexOf(':');
            if (colon <= 0 || header.length() > LONGEST_HEADER) {
                end("the input is no message of the protocol: a header such as Content-Length: 123 was expected");
                return;
            }
            if (line.substring(0, colon).strip().equalsIgnoreCase(LENGTH)) {
                length = number(line.substring(colon + 1).strip());
            }
        }
        if (length < 0 || length > LONGEST_MESSAGE) {
            end("the input is no message of the protocol: its header states no usable length");
            return;
        }
        byte[] body = in.readNBytes(length);
        if (body.length < length) {
            end("the input ends in the middle of a message");
        } else if (!isJson(body)) {
            end("the input is no message of the protocol: what follows the header is no JSON");
        } else {
            byte[] head = ("Content-Length: " + length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
            message = new byte[head.length + length];
            System.arraycopy(head, 0, message, 0, head.length);
            System.arraycopy(body, 0, message, head.length, length);
            at = 0;
        }
    }

    private int line(StringBuilder into) throws IOException {
        int c = in.read();
        while (c >= 0 && c != '\n' && into.length() <= LONGEST_HEADER) {
            into.append((char) c);
            c = in.read();
        }
        into.append('\n');
        if (c < 0 && into.toString().isBlank()) {
            into.setLength(0);
        }
        return c;
    }

    private static int number(String text) {
        try {
            return Integer.parseInt(text);
        } catch (NumberFormatException e) {
            return -1;
        }
    }

    private static boolean isJson(byte[] body) {
        try (JsonReader reader = new JsonReader(new InputStreamReader(new ByteArrayInputStream(body),
                StandardCharsets.UTF_8))) {
            reader.beginObject();
            while (reader.hasNext()) {
                reader.nextName();
                reader.skipValue();
            }
            reader.endObject();
            return true;
        } catch (MalformedJsonException | IllegalStateException | EOFException e) {
            return false;
        } catch (IOException e) {
            return false;
        }
    }

    private void end(String why) {
        over = true;
        complaint = why;
    }
}
