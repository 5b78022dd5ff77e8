// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare;

import org.loomwright.harness.link.NaturalOrder;

/**
 * What makes an element itself on one side: its sort, its owner and its name. No condition is part of it, so an element
 * stays the same when the vehicles that have it change.
 *
 * @param sort  what it is
 * @param owner name of the drawing, harness, platform or kit that declares it; for a wire with that of its circuit
 *              after a slash; empty for what is known to the whole project
 * @param name  its own name
 */
public record ItemId(Sort sort, String owner, String name) implements Comparable<ItemId> {

    private static final NaturalOrder NAMES = new NaturalOrder();
    private static final int SPREAD = 0x9E3779B1;

    /** What people call it: {@code connector J1 of front}. */
    public String label() {
        return sort.word() + " " + name + (owner.isEmpty() ? "" : " of " + owner);
    }

    /** Orders by owner, sort and name; numbers in names by their value. */
    @Override
    public int compareTo(ItemId other) {
        int byOwner = owner.equals(other.owner) ? 0 : NAMES.compare(owner, other.owner);
        int bySort = byOwner != 0 ? byOwner : sort.compareTo(other.sort);
        return bySort != 0 || name.equals(other.name) ? bySort : NAMES.compare(name, other.name);
    }

    /** Spread wide: names of wires and circuits are short, alike and many. */
    @Override
    public int hashCode() {
        return ((owner.hashCode() * SPREAD ^ name.hashCode()) * SPREAD) + sort.ordinal();
    }

    @Override
    public String toString() {
        return label();
    }
}
