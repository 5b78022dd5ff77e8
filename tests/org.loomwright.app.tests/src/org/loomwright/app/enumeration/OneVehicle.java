// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Element;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Ours;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Source;
import org.loomwright.harness.Span;
import org.loomwright.harness.Wiring;

/**
 * Decides every condition of a snapshot for one vehicle: what the vehicle has is there without condition, what it has
 * not is gone, and the platform leaves nothing to choose. Works on the shape of the records alone, so that it cannot
 * share a mistake with what reads their conditions.
 */
final class OneVehicle {

    private final Map<String, String> vehicle;
    private final Set<String> gone = new HashSet<>();

    private OneVehicle(Map<String, String> vehicle) {
        this.vehicle = vehicle;
    }

    /** The project of one vehicle. */
    static List<Source> of(List<Source> sources, Map<String, String> vehicle) {
        OneVehicle one = new OneVehicle(vehicle);
        sources.forEach(source -> source.elements().forEach(one::drawing));
        sources.forEach(source -> source.elements().forEach(one::harness));
        return sources.stream().map(source -> new Source(source.file(), source.text(),
                source.elements().stream().filter(one::isThere).map(one::element).toList(), source.problems()))
                .toList();
    }

    private void drawing(Element element) {
        if (element instanceof Wiring wiring && !EveryVehicle.holds(wiring.when(), vehicle)) {
            gone.add(wiring.name().text());
        }
    }

    /** A harness is for vehicles of the drawings that it covers. */
    private void harness(Element element) {
        if (element instanceof Wiring wiring && !wiring.ours().covers().isEmpty()
                && wiring.ours().covers().stream().allMatch(each -> gone.contains(each.text()))) {
            gone.add(wiring.name().text());
        }
    }

    private boolean isThere(Element element) {
        return switch (element) {
            case Wiring wiring -> !gone.contains(wiring.name().text());
            case Kit kit -> EveryVehicle.holds(kit.when(), vehicle);
            default -> true;
        };
    }

    private Element element(Element element) {
        return switch (decided(element)) {
            case Platform all -> new Platform(all.name(), all.title(), all.supply(), Optional.empty(), List.of(),
                    List.of(), List.of(), List.of(), all.zones(), all.places(), all.positions(), all.grounds(),
                    all.straps(), all.devices(), all.modes(), all.span());
            case Wiring all -> new Wiring(all.kind(), all.name(), all.title(), all.platform(), all.position(),
                    all.when(), all.sheets(), all.defaults(), all.datum(), all.runs(), all.connectors(), all.studs(),
                    all.devices(), all.circuits(), all.placed(), new Ours(all.ours().covers().stream()
                            .filter(each -> !gone.contains(each.text())).toList(), all.ours().settings(),
                            all.ours().caps(), all.ours().order()), all.span());
            case Element all -> all;
        };
    }

    @SuppressWarnings("unchecked")
    private <T> T decided(T value) {
        return (T) switch (value) {
            case Expression expression -> new Expression.Always();
            case Span span -> span;
            case List<?> list -> list.stream().filter(this::holds).map(this::decided).toList();
            case Optional<?> optional -> optional.filter(this::holds).map(this::decided);
            case Record each when each.getClass().getPackageName().startsWith("org.loomwright.harness") -> copy(each);
            default -> value;
        };
    }

    private boolean holds(Object value) {
        if (value instanceof Record each) {
            for (RecordComponent component : each.getClass().getRecordComponents()) {
                if (component.getType() == Expression.class && component.getName().equals("when")) {
                    return EveryVehicle.holds((Expression) get(component, each), vehicle);
                }
            }
        }
        return true;
    }

    private Record copy(Record from) {
        RecordComponent[] components = from.getClass().getRecordComponents();
        List<Object> values = new ArrayList<>();
        for (RecordComponent component : components) {
            values.add(decided(get(component, from)));
        }
        try {
            Constructor<? extends Record> made = from.getClass().getDeclaredConstructor(
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class[]::new));
            return made.newInstance(values.toArray());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Object get(RecordComponent component, Record from) {
        try {
            return component.getAccessor().invoke(from);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
