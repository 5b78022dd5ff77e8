// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.lang.ref.Reference;
import java.lang.ref.ReferenceQueue;
import java.lang.ref.WeakReference;
import java.util.HashMap;
import java.util.Map;
import org.loomwright.condition.internal.Diagram;

/**
 * The conditions that are in use, one for each function, and their hold on the diagram: a function is dropped when its
 * condition has become garbage. Guarded by the lock of {@link Vehicles}.
 */
final class Pool {
    private static final int LONGEST_WAIT_MILLISECONDS = 500;

    /** Knows which function to drop once its condition is garbage. */
    private static final class Handle extends WeakReference<Condition> {
        private final int node;

        Handle(Condition condition, ReferenceQueue<Condition> unused) {
            super(condition, unused);
            this.node = condition.node();
        }
    }

    private final Vehicles vehicles;
    private final Diagram diagram;
    private final Map<Integer, Handle> handles = new HashMap<>();
    private final ReferenceQueue<Condition> unused = new ReferenceQueue<>();

    Pool(Vehicles vehicles, Diagram diagram) {
        this.vehicles = vehicles;
        this.diagram = diagram;
    }

    /** Returns the condition for a function; there are never two at a time. */
    Condition condition(int node) {
        Handle handle = handles.get(node);
        Condition known = handle == null ? null : handle.get();
        if (known != null) {
            return known;
        }
        diagram.hold(node);
        Condition condition = new Condition(vehicles, node);
        handles.put(node, new Handle(condition, unused));
        return condition;
    }

    /** Drops the functions of conditions that are known to be garbage. */
    void dropUnused() {
        drop(unused.poll());
    }

    /** Has the garbage collected and drops what it finds; returns whether there was anything. */
    boolean makeRoom() {
        System.gc();
        try {
            return drop(unused.remove(LONGEST_WAIT_MILLISECONDS));
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private boolean drop(Reference<? extends Condition> first) {
        for (Reference<? extends Condition> next = first; next != null; next = unused.poll()) {
            Handle handle = (Handle) next;
            handles.remove(handle.node, handle);
            diagram.drop(handle.node);
        }
        return first != null;
    }
}
