// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.Optional;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.survey.Inspectors;
import org.loomwright.electric.survey.Survey;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Cancel;

/**
 * A fitment with its connections, which are built when they are asked for and kept until they are released. Safe for
 * use by several threads.
 */
final class Wired {

    /** The most vehicles of which a check solves the circuits. */
    static final int MOST_VEHICLES = 64;

    private final Fitment fitment;
    private final Map<Class<?>, Object> derived = new HashMap<>();
    private Connections connections;
    private Optional<Survey> survey;

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

    /**
     * What is wrong with currents and voltages; empty for more than {@link #MOST_VEHICLES} vehicles, which are left to
     * the command for currents, where there is nothing that feeds anything, and where no mode says what is switched on.
     */
    synchronized Optional<Survey> survey(Map<String, Part> parts) {
        if (survey == null) {
            boolean few = fitment.domain().count().compareTo(BigInteger.valueOf(MOST_VEHICLES)) <= 0;
            boolean modes = !fitment.platform().platform().modes().isEmpty();
            if (!few || !modes || connections().supplies().isEmpty()) {
                survey = Optional.empty();
            } else {
                Schematic schematic = Schematic.of(connections(), parts);
                survey = Optional.of(Survey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST,
                        Cancel.NEVER));
            }
        }
        return survey;
    }

    /** Lets go of the connections, which take more room than all that was found in them. */
    synchronized void release() {
        connections = null;
        derived.clear();
        survey = null;
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
