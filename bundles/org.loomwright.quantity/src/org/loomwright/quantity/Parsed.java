// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.util.Objects;
import java.util.Optional;

/**
 * What came of reading something that a person wrote: a value, or one sentence that says what is wrong with it.
 *
 * @param <T> what is read
 */
public sealed interface Parsed<T> {
    /** The text could be read. */
    record Value<T>(T value) implements Parsed<T> {
        public Value {
            Objects.requireNonNull(value);
        }
    }

    /**
     * The text could not be read.
     *
     * @param message one sentence in trade words, without the position and without a full stop
     */
    record Fault<T>(String message) implements Parsed<T> {
        public Fault {
            Objects.requireNonNull(message);
        }
    }

    static <T> Parsed<T> of(T value) {
        return new Value<>(value);
    }

    static <T> Parsed<T> fault(String message) {
        return new Fault<>(message);
    }

    /** Returns the value, or nothing if there was a fault. */
    default Optional<T> optional() {
        return this instanceof Value<T>(T value) ? Optional.of(value) : Optional.empty();
    }

    /** Returns the message of the fault, or nothing if there is a value. */
    default Optional<String> problem() {
        return this instanceof Fault<T>(String message) ? Optional.of(message) : Optional.empty();
    }
}
