// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

/**
 * A spot where wires end: a value that can serve as a key.
 *
 * @param kind    what it is
 * @param owner   name of the drawing, harness or platform that declares the element
 * @param element name of the connector, splice, stud or device
 * @param pin     cavity or pin; empty for a splice, a stud and an end without one
 */
public record Node(Kind kind, String owner, String element, String pin) implements Comparable<Node> {

    /** What a wire can end at. */
    public enum Kind {
        /** A cavity of a connector. */
        CAVITY,
        /** A splice. */
        SPLICE,
        /** A ground stud. */
        STUD,
        /** A pin of a device. */
        PIN,
        /** A name that nothing has. */
        NOWHERE
    }

    /** The text that an engineer would write for it: {@code J1:7}, {@code S4}. */
    public String label() {
        return pin.isEmpty() ? element : element + ":" + pin;
    }

    /** Orders by owner, element and pin; pins that are numbers by their value. */
    @Override
    public int compareTo(Node other) {
        int byOwner = owner.compareTo(other.owner);
        if (byOwner != 0) {
            return byOwner;
        }
        int byElement = element.compareTo(other.element);
        if (byElement != 0) {
            return byElement;
        }
        int byPin = NaturalOrder.order(pin, other.pin);
        return byPin != 0 ? byPin : kind.compareTo(other.kind);
    }

    /** Written out, since graphs ask for it all the time and a derived one is slow while the program starts. */
    @Override
    public int hashCode() {
        return ((owner.hashCode() * 31 + element.hashCode()) * 31 + pin.hashCode()) * 31 + kind.ordinal();
    }

    @Override
    public boolean equals(Object other) {
        return this == other || other instanceof Node that && kind == that.kind && pin.equals(that.pin)
                && element.equals(that.element) && owner.equals(that.owner);
    }

    @Override
    public String toString() {
        return label();
    }
}
