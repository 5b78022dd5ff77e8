// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.matrix;

/** The parts of a matrix, in their order. */
public enum Section {
    /** Circuits with their splices and wires. */
    CIRCUITS("circuits", "circuit"),
    /** Connectors and ground studs. */
    CONNECTORS("connectors", "connector"),
    /** In-line devices: fuses, relays, diodes. */
    DEVICES("devices", "device"),
    /** Where branches go: their lengths, and where they leave the trunk. */
    PLACES("places", "place");

    private final String words;
    private final String one;

    Section(String words, String one) {
        this.words = words;
        this.one = one;
    }

    /** Its heading. */
    public String words() {
        return words;
    }

    /** A number of its elements: {@code 1 circuit}, {@code 3 circuits}. */
    public String count(int number) {
        return number + " " + (number == 1 ? one : words);
    }
}
