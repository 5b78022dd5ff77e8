// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.write;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * The entries of a ZIP file in memory, read by way of its central directory (ISO/IEC 21320-1). The stream of the JDK
 * reads such a file from its start and cannot tell where an entry ends whose size follows it in 64 bits.
 */
final class ZipEntries {

    private static final int END = 0x0605_4b50;
    private static final int END_SIZE = 22;
    private static final int ENTRY = 0x0201_4b50;
    private static final int ENTRY_SIZE = 46;
    private static final int LOCAL_SIZE = 30;
    private static final int DEFLATED = 8;

    private ZipEntries() {
    }

    /** Contents by name, in the order of the directory. */
    static Map<String, byte[]> of(byte[] file) throws IOException {
        ByteBuffer in = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
        int end = file.length - END_SIZE;
        while (end >= 0 && in.getInt(end) != END) {
            end--;
        }
        if (end < 0) {
            throw new IOException("no directory");
        }
        Map<String, byte[]> entries = new LinkedHashMap<>();
        int at = in.getInt(end + 16);
        for (int i = Short.toUnsignedInt(in.getShort(end + 10)); i > 0; i--) {
            if (in.getInt(at) != ENTRY) {
                throw new IOException("no entry at " + at);
            }
            int name = Short.toUnsignedInt(in.getShort(at + 28));
            entries.put(new String(file, at + ENTRY_SIZE, name, StandardCharsets.UTF_8),
                    content(file, in, at));
            at += ENTRY_SIZE + name + Short.toUnsignedInt(in.getShort(at + 30))
                    + Short.toUnsignedInt(in.getShort(at + 32));
        }
        return entries;
    }

    private static byte[] content(byte[] file, ByteBuffer in, int entry) throws IOException {
        int packed = in.getInt(entry + 20);
        int local = in.getInt(entry + 42);
        int from = local + LOCAL_SIZE + Short.toUnsignedInt(in.getShort(local + 26))
                + Short.toUnsignedInt(in.getShort(local + 28));
        if (in.getShort(entry + 10) != DEFLATED) {
            return Arrays.copyOfRange(file, from, from + packed);
        }
        Inflater inflater = new Inflater(true);
        try {
            inflater.setInput(file, from, packed);
            byte[] content = new byte[in.getInt(entry + 24)];
            int done = 0;
            while (done < content.length) {
                int more = inflater.inflate(content, done, content.length - done);
                if (more == 0) {
                    throw new IOException("an entry is cut off");
                }
                done += more;
            }
            return content;
        } catch (DataFormatException e) {
            throw new IOException("an entry is damaged", e);
        } finally {
            inflater.end();
        }
    }
}
