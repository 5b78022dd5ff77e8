// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;

/** Packs numbers and texts into bytes; a text that comes again is packed as a number. For one thread. */
final class Packing {

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final Map<String, Integer> texts = new HashMap<>();

    /** Packs a number, which may be negative. */
    Packing number(long number) {
        long left = number;
        while ((left & ~0x7fL) != 0) {
            bytes.write((int) (left & 0x7f | 0x80));
            left >>>= 7;
        }
        bytes.write((int) left);
        return this;
    }

    Packing bit(boolean bit) {
        return number(bit ? 1 : 0);
    }

    /** Packs a text: its index among the texts so far; a new one follows, as Latin-1 or as UTF-16 units. */
    Packing text(String text) {
        Integer index = texts.putIfAbsent(text, texts.size());
        if (index != null) {
            return number(index);
        }
        number(texts.size() - 1L);
        byte[] latin = text.getBytes(StandardCharsets.ISO_8859_1);
        boolean wide = !new String(latin, StandardCharsets.ISO_8859_1).equals(text);
        number((long) text.length() << 1 | (wide ? 1 : 0));
        if (wide) {
            text.chars().forEach(this::number);
        } else {
            bytes.writeBytes(latin);
        }
        return this;
    }

    <T> Packing list(Collection<T> list, BiConsumer<Packing, T> each) {
        number(list.size());
        list.forEach(element -> each.accept(this, element));
        return this;
    }

    <T> Packing maybe(Optional<T> maybe, BiConsumer<Packing, T> each) {
        bit(maybe.isPresent());
        maybe.ifPresent(value -> each.accept(this, value));
        return this;
    }

    byte[] bytes() {
        return bytes.toByteArray();
    }
}
