// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.nio.ByteBuffer;
import java.util.zip.CRC32;

/** Eight bytes with a checksum (CRC-32) of what follows, so that a damaged file is not taken for a whole one. */
final class Checksum {

    static final int LENGTH = Long.BYTES;

    private Checksum() {
    }

    static byte[] before(byte[] body) {
        return ByteBuffer.allocate(LENGTH + body.length).putLong(of(body, 0)).put(body).array();
    }

    static boolean holds(byte[] bytes) {
        return bytes.length > LENGTH && ByteBuffer.wrap(bytes).getLong() == of(bytes, LENGTH);
    }

    private static long of(byte[] bytes, int from) {
        CRC32 sum = new CRC32();
        sum.update(bytes, from, bytes.length - from);
        return sum.getValue();
    }
}
