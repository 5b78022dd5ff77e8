// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    private final List<Catalogue> catalogues;
    private final Map<String, Wiring> wirings;
    private final Map<String, Linked<Platform, PlatformView>> platforms;
    private final Map<String, Linked<Wiring, WiringView>> linkedWirings;
    private final List<Object> names;
    private final int afresh;

    LinkedProject(Project project, List<Catalogue> catalogues, Map<String, Wiring> wirings,
            Map<String, Linked<Platform, PlatformView>> platforms,
            Map<String, Linked<Wiring, WiringView>> linkedWirings, int afresh) {
        this.project = project;
        this.catalogues = List.copyOf(catalogues);
        this.wirings = Collections.unmodifiableMap(new LinkedHashMap<>(wirings));
        this.platforms = Map.copyOf(platforms);
        this.linkedWirings = Map.copyOf(linkedWirings);
        this.names = names(wirings);
        this.afresh = afresh;
    }

    /** Joins sources; see {@link Project#link}. */
    public static LinkedProject of(List<Source> sources) {
        return new Linker(sources).linked();
    }

    /**
     * Joins other sources, taking over what did not change. A source counts as unchanged while it is the same object.
     * Linear in the number of files and wires, but only what changed is looked into.
     */
    public LinkedProject again(List<Source> sources) {
        return new Linker(sources, Vehicles.MOST_NODES, Optional.of(this)).linked();
    }

    /** Returns the project. */
    public Project project() {
        return project;
    }

    /** Returns how many platforms, drawings and harnesses were joined afresh, for tests that guard growth. */
    public int afresh() {
        return afresh;
    }

    List<Catalogue> catalogues() {
        return catalogues;
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
