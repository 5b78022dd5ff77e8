// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Source;

/**
 * Gives parts that are like others the facts of these. A part of a project is like one of the project or, when that has
 * none of the name or the name is its own, like one of the shelf; a part of the shelf is like another of the shelf. So
 * a project that replaces a part changes no other part of the shelf. O(facts) for each part.
 */
final class PartLinker {

    private final Problems problems;
    private final Shelf shelf;
    private final Map<String, Part> own = new LinkedHashMap<>();
    private final Map<String, Part> ready = new LinkedHashMap<>();
    private final Map<Part, Part> whole = new IdentityHashMap<>();
    private Set<String> damaged = Set.of();

    PartLinker(Problems problems, Shelf shelf) {
        this.problems = problems;
        this.shelf = shelf;
    }

    /** Takes in a part that the project states. */
    void add(Part part) {
        Part before = part.name().text().isEmpty() ? null : own.putIfAbsent(part.name().text(), part);
        if (before != null) {
            problems.twice("parts", part.name(), before.name());
        }
    }

    /** Takes in parts of the shelf. */
    void addReady(List<Source> sources) {
        sources.forEach(source -> source.elements().forEach(element -> {
            if (element instanceof Catalogue catalogue) {
                catalogue.parts().forEach(part -> ready.putIfAbsent(part.name().text(), part));
            }
        }));
    }

    /** True for a name that the project itself states and does not build on the shelf's part of that name. */
    boolean isWholeHere(String name) {
        Part part = own.get(name);
        return part != null && part.base().filter(base -> base.text().equals(name)).isEmpty();
    }

    /**
     * All parts with all their facts: the project's, then those of the shelf that these do not hide.
     *
     * @param unread the names of parts of the project that could not be read
     */
    Parts link(Set<String> unread) {
        damaged = Set.copyOf(unread);
        Map<String, Part> parts = new LinkedHashMap<>();
        own.forEach((name, part) -> parts.put(name, whole(part)));
        ready.forEach((name, part) -> parts.computeIfAbsent(name, key -> whole(part)));
        return new Parts(Collections.unmodifiableMap(parts), Collections.unmodifiableSet(own.keySet()),
                damaged, shelf);
    }

    /** A part, and the one that it is like; null when it is like none, or that has been reported as impossible. */
    private record Step(Part part, Part base) {
    }

    private Part whole(Part start) {
        List<Step> chain = new ArrayList<>();
        Map<Part, Integer> places = new IdentityHashMap<>();
        for (Part part = start; part != null && !whole.containsKey(part); part = chain.getLast().base()) {
            Integer before = places.putIfAbsent(part, chain.size());
            if (before != null) {
                circle(chain.subList(before, chain.size()).stream().map(Step::part).toList());
                break;
            }
            chain.add(new Step(part, base(part)));
        }
        for (Step step : chain.reversed()) {
            whole.computeIfAbsent(step.part(), part ->
                    step.base() == null ? part : Likeness.of(part, whole.get(step.base())));
        }
        return whole.get(start);
    }

    private Part base(Part part) {
        if (part.base().isEmpty() || part.base().get().text().isEmpty()) {
            return null;
        }
        Ref ref = part.base().get();
        boolean ofShelf = own.get(part.name().text()) != part;
        boolean itself = ref.text().equals(part.name().text());
        Part base = ofShelf || itself ? ready.get(ref.text())
                : own.getOrDefault(ref.text(), ready.get(ref.text()));
        if (base == null && itself) {
            problems.add("like-itself", ref.span(), "\"" + ref + "\" is like itself, and the stock has no part of that"
                    + " name to begin with", "name the part that it is like, or leave that out");
        } else if (base == null) {
            new Parts(Map.of(), own.keySet(), damaged, shelf).unknown("part", ref, Set.of(), problems);
        } else if (base.kind() != part.kind()) {
            problems.add("like-another-kind", ref.span(), "\"" + part.name() + "\" is of kind " + part.kind().word()
                    + ", but \"" + ref + "\" of kind " + base.kind().word(), "a part is like one of its own kind");
            return null;
        }
        return base;
    }

    /** Reports a circle at its first part in order of place; its parts keep the facts that they state. */
    private void circle(List<Part> parts) {
        Part first = Collections.min(parts, Comparator.comparing(Part::span));
        List<Part> order = new ArrayList<>(parts);
        Collections.rotate(order, -order.indexOf(first));
        order.add(first);
        problems.add("like-in-circle", first.base().get().span(), "parts are like each other in a circle: "
                + order.stream().map(part -> part.name().text()).collect(Collectors.joining(" like ")),
                "let one of them state all its facts itself");
        parts.forEach(part -> whole.put(part, part));
    }
}
