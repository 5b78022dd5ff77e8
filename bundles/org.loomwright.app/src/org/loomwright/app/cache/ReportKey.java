// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.rules.Settings;

/** Names reports by a hash (SHA-256) of all that they depend on. */
final class ReportKey {

    /** Below this many bytes, starting threads takes longer than they save. */
    private static final long WORTH_SHARING = 1 << 20;

    private ReportKey() {
    }

    /**
     * The name of a report: 64 hexadecimal digits.
     *
     * @param tool     which build of the program it is of
     * @param prints   those of the files by name, in the order in which they are read
     * @param settings what the check depends on besides
     */
    static String of(String tool, Map<String, String> prints, Settings settings) {
        List<byte[]> pieces = new ArrayList<>();
        pieces.add(bytes(tool));
        pieces.add(new byte[] {(byte) (settings.every() ? 1 : 0)});
        pieces.add(bytes(settings.today().map(LocalDate::toString).orElse("")));
        prints.forEach((name, print) -> {
            pieces.add(bytes(name));
            pieces.add(bytes(print));
        });
        return hash(pieces);
    }

    /** The prints of files by name, in their order; of many bytes by all threads. Takes time linear in their size. */
    static Map<String, String> of(Map<String, byte[]> files) {
        List<String> names = List.copyOf(files.keySet());
        boolean many = files.values().stream().mapToLong(content -> content.length).sum() > WORTH_SHARING;
        List<String> each = (many ? names.parallelStream() : names.stream()).map(name -> of(name, files.get(name)))
                .toList();
        Map<String, String> prints = new LinkedHashMap<>();
        for (int i = 0; i < names.size(); i++) {
            prints.put(names.get(i), each.get(i));
        }
        return prints;
    }

    /** The name of what is known of a scope: 64 hexadecimal digits. */
    static String of(String tool, String scope) {
        return of(tool, Map.of(scope, ""), Settings.TIMELESS);
    }

    /** The print of one file: 64 hexadecimal digits. */
    static String of(String file, byte[] content) {
        return hash(List.of(bytes(file), content));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** The length goes before each piece, so that no two lists of pieces run together into the same bytes. */
    private static String hash(List<byte[]> pieces) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (byte[] piece : pieces) {
                for (int shift = 24; shift >= 0; shift -= 8) {
                    digest.update((byte) (piece.length >>> shift));
                }
                digest.update(piece);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
