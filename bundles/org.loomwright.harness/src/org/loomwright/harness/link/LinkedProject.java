// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Catalogue;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;

/**
 * A project that can be joined again after some of its sources changed. What depends on no changed source is the same
 * object in both projects, conditions included; all else is as {@link Project#link} would make it. Immutable; safe for
 * use by several threads.
 */
public final class LinkedProject {

    private final Project project;
    private final Shelf shelf;
    private final Known known;
    private final Map<String, Wiring> wirings;
    private final Map<String, Linked<Platform, PlatformView>> platforms;
    private final Map<String, Linked<Wiring, WiringView>> linkedWirings;
    private final List<Object> names;
    private final int afresh;

    /**
     * What was known of parts.
     *
     * @param catalogues the catalogues of the project
     * @param taken      the names of what was taken from the shelf
     * @param parts      the parts that came of both
     */
    record Known(List<Catalogue> catalogues, Set<String> taken, Parts parts) {

        Known {
            catalogues = List.copyOf(catalogues);
            taken = Set.copyOf(taken);
        }
    }

    LinkedProject(Project project, Shelf shelf, Known known, Map<String, Wiring> wirings,
            Map<String, Linked<Platform, PlatformView>> platforms,
            Map<String, Linked<Wiring, WiringView>> linkedWirings, int afresh) {
        this.project = project;
        this.shelf = shelf;
        this.known = known;
        this.wirings = Collections.unmodifiableMap(new LinkedHashMap<>(wirings));
        this.platforms = Map.copyOf(platforms);
        this.linkedWirings = Map.copyOf(linkedWirings);
        this.names = names(wirings);
        this.afresh = afresh;
    }

    /** Joins sources that use no parts but their own; see {@link Project#link}. */
    public static LinkedProject of(List<Source> sources) {
        return of(sources, Shelf.EMPTY);
    }

    /** Joins sources, with parts of a shelf; see {@link Project#link}. */
    public static LinkedProject of(List<Source> sources, Shelf shelf) {
        return new Linker(sources, shelf).linked();
    }

    /**
     * Joins other sources, taking over what did not change. A source counts as unchanged while it is the same object.
     * Linear in the number of files and wires, but only what changed is looked into.
     */
    public LinkedProject again(List<Source> sources) {
        return new Linker(sources, shelf, Vehicles.MOST_NODES, Optional.of(this)).linked();
    }

    /** Returns the project. */
    public Project project() {
        return project;
    }

    /** Returns how many platforms, drawings and harnesses were joined afresh, for tests that guard growth. */
    public int afresh() {
        return afresh;
    }

    Known known() {
        return known;
    }

    Map<String, Wiring> wirings() {
        return wirings;
    }

    Map<String, Linked<Platform, PlatformView>> platforms() {
        return platforms;
    }

    Map<String, Linked<Wiring, WiringView>> linkedWirings() {
        return linkedWirings;
    }

    /** Returns whether drawings and harnesses have the same names, kinds and order. */
    boolean sameNames(Map<String, Wiring> others) {
        return names.equals(names(others));
    }

    private static List<Object> names(Map<String, Wiring> wirings) {
        List<Object> names = new ArrayList<>();
        wirings.forEach((name, wiring) -> {
            names.add(name);
            names.add(wiring.kind());
        });
        return names;
    }
}
