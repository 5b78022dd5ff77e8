// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Damage of the sort that people, merges and broken disks do to a text: a token, a line or some bytes are lost,
 * doubled, exchanged or taken from elsewhere. The same seed does the same damage.
 */
final class Mutations {

    private static final Pattern TOKEN = Pattern.compile("\"[^\"\n]*\"|[\\w-]+|[^\\s\\w]");
    private static final String[] STRANGERS = {"{", "}", "\"", "/*", "*/", "//", "when", "not", "(", ")", "1e999", "-1",
            "99999999999 in", "0/0 in", "\u0000", "\u2603", "\uFEFF", "..", ":", "of", "unknown", "999999 .. 1"};

    private final Random random;

    Mutations(long seed) {
        random = new Random(seed);
    }

    /** The text after one to four injuries. */
    byte[] damage(byte[] text) {
        byte[] result = text;
        for (int i = random.nextInt(4); i >= 0; i--) {
            result = switch (random.nextInt(3)) {
                case 0 -> token(result);
                case 1 -> line(result);
                default -> bytes(result);
            };
        }
        return result;
    }

    private byte[] token(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        List<int[]> tokens = new ArrayList<>();
        Matcher matcher = TOKEN.matcher(text);
        while (matcher.find()) {
            tokens.add(new int[] {matcher.start(), matcher.end()});
        }
        if (tokens.isEmpty()) {
            return bytes;
        }
        int[] at = tokens.get(random.nextInt(tokens.size()));
        int[] other = tokens.get(random.nextInt(tokens.size()));
        String here = text.substring(at[0], at[1]);
        String put = switch (random.nextInt(4)) {
            case 0 -> "";
            case 1 -> here + " " + here;
            case 2 -> text.substring(other[0], other[1]);
            default -> STRANGERS[random.nextInt(STRANGERS.length)];
        };
        return (text.substring(0, at[0]) + put + text.substring(at[1])).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] line(byte[] bytes) {
        List<String> lines = new ArrayList<>(Arrays.asList(new String(bytes, StandardCharsets.UTF_8).split("\n", -1)));
        int at = random.nextInt(lines.size());
        int other = random.nextInt(lines.size());
        switch (random.nextInt(4)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, lines.get(other));
            case 2 -> lines.set(at, lines.get(at) + " " + lines.get(other));
            default -> lines.set(at, lines.set(other, lines.get(at)));
        }
        return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
    }

    private byte[] bytes(byte[] bytes) {
        if (bytes.length == 0) {
            return bytes;
        }
        int at = random.nextInt(bytes.length);
        int length = Math.min(bytes.length - at, 1 + random.nextInt(40));
        byte[] result;
        switch (random.nextInt(3)) {
            case 0 -> {
                result = Arrays.copyOf(bytes, bytes.length - length);
                System.arraycopy(bytes, at + length, result, at, bytes.length - at - length);
            }
            case 1 -> {
                result = bytes.clone();
                result[at] = (byte) random.nextInt(256);
            }
            default -> result = Arrays.copyOf(bytes, at);
        }
        return result;
    }
}
