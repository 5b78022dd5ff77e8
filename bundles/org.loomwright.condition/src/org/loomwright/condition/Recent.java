// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

/**
 * The results of recent operations on conditions of one platform, found without its lock. Each pair of conditions has
 * one place, and a newer result takes it; what is not found is worked out again. Rules ask the same few thousand
 * questions all over, so that most are answered here and threads seldom wait for each other.
 *
 * <p>Safe for use by several threads: an entry is immutable and never changed in place.
 */
final class Recent {

    /** What can be asked of two conditions. For the last two, the answer is all for yes and none for no. */
    enum Operation {
        AND, OR, MINUS, IMPLIES, EXCLUDES
    }

    private static final int BITS = 15;
    private static final int PLACES = 1 << BITS;
    private static final int SPREAD = 0x9E3779B9;

    private record Entry(Operation operation, Condition left, Condition right, Condition result) {
    }

    private volatile Entry[] entries;

    /** Returns the result of an operation; null when it is not known here. */
    Condition find(Operation operation, Condition left, Condition right) {
        Entry[] known = entries;
        Entry entry = known == null ? null : known[place(operation, left, right)];
        return entry != null && entry.left == left && entry.right == right && entry.operation == operation
                ? entry.result : null;
    }

    /** Remembers a result and returns it. */
    Condition keep(Operation operation, Condition left, Condition right, Condition result) {
        Entry[] known = entries;
        if (known == null) {
            known = new Entry[PLACES];
            entries = known;
        }
        known[place(operation, left, right)] = new Entry(operation, left, right, result);
        return result;
    }

    /** Forgets everything, so that conditions that nobody else uses can make room. */
    void clear() {
        entries = null;
    }

    private static int place(Operation operation, Condition left, Condition right) {
        int mixed = ((left.node() * 31 + right.node()) * 31 + operation.ordinal()) * SPREAD;
        return mixed >>> Integer.SIZE - BITS;
    }
}
