// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.loomwright.condition.Condition;
import org.loomwright.electric.connection.Connections;
import org.loomwright.electric.connection.Fitment;
import org.loomwright.electric.network.Boundary;
import org.loomwright.electric.network.Schematic;
import org.loomwright.electric.survey.BlockSurvey;
import org.loomwright.electric.survey.Inspectors;
import org.loomwright.electric.survey.Survey;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Cancel;

/**
 * A fitment with its connections, which are built when they are asked for and kept until they are released. Safe for
 * use by several threads: who asks for the connections does not wait for circuits that another thread solves.
 */
final class Wired {

    /** So many vehicles are solved whole, whatever that takes. */
    static final int FEW_VEHICLES = 64;
    /** More vehicles are looked at where their connections hang on no more conditions than this. */
    static final int MOST_CONDITIONS = 16;
    /** So many assignments, of all blocks and modes, are solved of more vehicles. */
    static final int MOST_ASSIGNMENTS = 1_024;

    private final Fitment fitment;
    private final boolean every;
    private final Once<Connections> connections = new Once<>();
    private final Once<Circuits> circuits = new Once<>();
    private final Map<Class<?>, Once<Object>> derived = new ConcurrentHashMap<>();

    /**
     * @param every whether circuits are solved however many vehicles there are
     */
    Wired(Fitment fitment, boolean every) {
        this.fitment = fitment;
        this.every = every;
    }

    Fitment fitment() {
        return fitment;
    }

    /** Throws {@link org.loomwright.condition.TooManyCombinations} when their conditions cannot be followed. */
    Connections connections() {
        return connections.get(() -> Connections.of(fitment));
    }

    /** What several rules ask of the connections, made when the first of them asks and of the connections alone. */
    <T> T derived(Class<T> type, Function<Connections, T> maker) {
        return type.cast(derived.computeIfAbsent(type, key -> new Once<>()).get(() -> maker.apply(connections())));
    }

    boolean every() {
        return every;
    }

    /**
     * What is wrong with currents and voltages: nothing where there is nothing that feeds anything, or where no mode
     * says what is switched on. Of more than {@link #FEW_VEHICLES} vehicles no more than {@link #MOST_ASSIGNMENTS}
     * assignments are solved, and none where the connections hang on more than {@link #MOST_CONDITIONS} conditions.
     */
    Circuits circuits(Map<String, Part> parts, Cancel cancel) {
        return circuits.get(() -> fitment.platform().platform().modes().isEmpty()
                || !isFed() ? Circuits.NONE : solve(parts, cancel));
    }

    private Circuits solve(Map<String, Part> parts, Cancel cancel) {
        boolean few = fitment.domain().count().compareTo(BigInteger.valueOf(FEW_VEHICLES)) <= 0;
        if (!few && !every && hangsOnMuch()) {
            return Circuits.TOO_MANY;
        }
        Schematic schematic = Schematic.of(connections(), parts);
        if (few) {
            return Circuits.of(Survey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, cancel));
        }
        return Circuits.of((every ? BlockSurvey.of(schematic, schematic.modes(), Inspectors.all(), Survey.MOST, 1,
                cancel) : BlockSurvey.within(schematic, schematic.modes(), Inspectors.all(), MOST_ASSIGNMENTS,
                        cancel)).survey());
    }

    private boolean isFed() {
        return !connections().supplies().isEmpty() || Boundary.of(connections()).stream()
                .anyMatch(each -> each.kind() == Boundary.Kind.FEED);
    }

    private boolean hangsOnMuch() {
        Set<Condition> conditions = new HashSet<>();
        return connections().edges().stream().anyMatch(each -> conditions.add(each.when())
                && conditions.size() > MOST_CONDITIONS);
    }

    /** Lets go of the connections, which take more room than all that was found in them. */
    void release() {
        connections.release();
        derived.clear();
        circuits.release();
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
