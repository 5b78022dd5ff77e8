// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.function.Supplier;

/**
 * A value that is made when it is first asked for and kept until it is released. Safe for use by several threads; who
 * asks while it is made waits for it. When making it throws, the next one who asks makes it.
 */
final class Once<T> {

    private T value;

    /** @param maker makes the value, never null, and does not ask for it */
    synchronized T get(Supplier<T> maker) {
        if (value == null) {
            value = maker.get();
        }
        return value;
    }

    synchronized void release() {
        value = null;
    }
}
