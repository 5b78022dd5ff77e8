// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Takes out again what {@link Packing} put in. Bytes that it did not make lead to a {@link RuntimeException} or to
 * wrong values, never to more work or memory than a small multiple of their number. For one thread.
 */
final class Unpacking {

    private final byte[] bytes;
    private final List<String> texts = new ArrayList<>();
    private int at;

    Unpacking(byte[] bytes, int from) {
        this.bytes = bytes;
        at = from;
    }

    long number() {
        long number = 0;
        for (int shift = 0; ; shift += 7) {
            byte next = bytes[at++];
            number |= (next & 0x7fL) << shift;
            if (next >= 0) {
                return number;
            }
        }
    }

    int small() {
        return Math.toIntExact(number());
    }

    boolean bit() {
        return number() != 0;
    }

    String text() {
        int index = small();
        if (index < texts.size()) {
            return texts.get(index);
        }
        int head = size();
        String text;
        if ((head & 1) == 0) {
            text = new String(bytes, at, head >>> 1, StandardCharsets.ISO_8859_1);
            at += head >>> 1;
        } else {
            char[] units = new char[head >>> 1];
            for (int i = 0; i < units.length; i++) {
                units[i] = (char) number();
            }
            text = new String(units);
        }
        texts.add(text);
        return text;
    }

    <T> List<T> list(Function<Unpacking, T> each) {
        int size = size();
        List<T> list = new ArrayList<>(size);
        for (int i = 0; i < size; i++) {
            list.add(each.apply(this));
        }
        return list;
    }

    <T> Optional<T> maybe(Function<Unpacking, T> each) {
        return bit() ? Optional.of(each.apply(this)) : Optional.empty();
    }

    /** Returns whether everything was taken out. */
    boolean isEmpty() {
        return at == bytes.length;
    }

    /** A number of things that each take a byte at least. */
    int size() {
        int size = small();
        if (size < 0 || size >>> 1 > bytes.length - at) {
            throw new IllegalArgumentException("damaged");
        }
        return size;
    }
}
