// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Fitment;

/**
 * A fitment with its connections, which are built when they are asked for and kept until they are released. Safe for
 * use by several threads.
 */
final class Wired {

    private final Fitment fitment;
    private final Map<Class<?>, Object> derived = new HashMap<>();
    private Connections connections;

    Wired(Fitment fitment) {
        this.fitment = fitment;
    }

    Fitment fitment() {
        return fitment;
    }

    /** Throws {@link org.loomwright.condition.TooManyCombinations} when their conditions cannot be followed. */
    synchronized Connections connections() {
        if (connections == null) {
            connections = Connections.of(fitment);
        }
        return connections;
    }

    /** What several rules ask of the connections, made when the first of them asks and of the connections alone. */
    synchronized <T> T derived(Class<T> type, Function<Connections, T> maker) {
        return type.cast(derived.computeIfAbsent(type, key -> maker.apply(connections())));
    }

    /** Lets go of the connections, which take more room than all that was found in them. */
    synchronized void release() {
        connections = null;
        derived.clear();
    }

    /** What the connections depend on, to be compared by identity. */
    List<Object> inputs() {
        List<Object> inputs = new ArrayList<>();
        inputs.add(fitment.platform());
        inputs.add(fitment.domain());
        fitment.fitted().values().forEach(each -> {
            inputs.add(each.view());
            inputs.add(each.when());
        });
        return inputs;
    }
}
