// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Targets that are made of the same things.
 *
 * @param name   tells it from the other units of a project
 * @param inputs what its targets are made of, to be compared by identity
 * @param single targets that are large: each is the work of several threads, one rule a time
 * @param lots   lists of small targets: each list is the work of one thread
 * @param after  to be done when nothing more is going to be asked about it
 */
record Unit(String name, List<Object> inputs, Function<Shapes, Target> single, List<Supplier<List<Target>>> lots,
        Runnable after) {

    Unit {
        inputs = List.copyOf(inputs);
        lots = List.copyOf(lots);
    }
}
