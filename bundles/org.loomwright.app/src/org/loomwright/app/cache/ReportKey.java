// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.Map;
import org.loomwright.rules.Settings;

/** Names reports by a hash (SHA-256) of all that they depend on. */
final class ReportKey {

    private ReportKey() {
    }

    /**
     * The name of a report: 64 hexadecimal digits. Takes time linear in the size of the files.
     *
     * @param tool     which build of the program it is of
     * @param files    bytes of the files by name, in the order in which they are read
     * @param settings what the check depends on besides
     */
    static String of(String tool, Map<String, byte[]> files, Settings settings) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            add(tool.getBytes(StandardCharsets.UTF_8), digest);
            add(new byte[] {(byte) (settings.every() ? 1 : 0)}, digest);
            add(settings.today().map(LocalDate::toString).orElse("").getBytes(StandardCharsets.UTF_8), digest);
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                add(file.getKey().getBytes(StandardCharsets.UTF_8), digest);
                add(file.getValue(), digest);
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The name of what is known of a scope: 64 hexadecimal digits. */
    static String of(String tool, String scope) {
        return of(tool, Map.of(scope, new byte[0]), Settings.TIMELESS);
    }

    /** The print of one file: 64 hexadecimal digits. */
    static String of(String file, byte[] bytes) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            add(file.getBytes(StandardCharsets.UTF_8), digest);
            add(bytes, digest);
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The length goes first, so that no two lists of pieces run together into the same bytes. */
    private static void add(byte[] bytes, MessageDigest digest) {
        for (int shift = 24; shift >= 0; shift -= 8) {
            digest.update((byte) (bytes.length >>> shift));
        }
        digest.update(bytes);
    }
}
