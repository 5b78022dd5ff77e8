// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import java.util.Optional;

/** The three systems in which conductor sizes are stated. The same number in two of them is not the same wire. */
public enum SizeSystem {
    /** SAE gauge: the size by its least cross-section in circular mils; 3 to 11 % below AWG. */
    SAE("ga", "SAE"),
    /** American Wire Gauge after ASTM B258. */
    AWG("awg", "AWG"),
    /** Nominal cross-section in square millimetres. */
    METRIC("mm2", "metric");

    private final String symbol;
    private final String words;

    SizeSystem(String symbol, String words) {
        this.symbol = symbol;
        this.words = words;
    }

    /** Returns the word that follows the number in the language: {@code ga}, {@code awg} or {@code mm2}. */
    public String symbol() {
        return symbol;
    }

    /** Returns the name for people. */
    public String words() {
        return words;
    }

    /** Returns the system that is written with exactly this word. */
    public static Optional<SizeSystem> ofSymbol(String text) {
        for (SizeSystem system : values()) {
            if (system.symbol.equals(text)) {
                return Optional.of(system);
            }
        }
        return Optional.empty();
    }
}
