// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.loomwright.condition.Assignment;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/**
 * Checks a project at once and vehicle by vehicle. A rule speaks of an element in a vehicle on its own exactly if the
 * vehicle is within the condition of a finding of that rule on that element in the project as a whole.
 */
final class Comparison {

    private final SourceReader reader;
    private final RuleEngine engine = StandardRules.engine();
    private final Set<String> compared;
    private final List<String> faults = new ArrayList<>();
    private final Map<String, Integer> spoke = new TreeMap<>();
    private int vehicles;

    /**
     * @param compared ids of the rules that are compared vehicle by vehicle
     */
    Comparison(SourceReader reader, Set<String> compared) {
        this.reader = reader;
        this.compared = compared;
    }

    /** Every disagreement so far. */
    List<String> faults() {
        return faults;
    }

    /** For how many vehicles each rule spoke so far. */
    Map<String, Integer> spoke() {
        return spoke;
    }

    /** How many vehicles were checked on their own. */
    int vehicles() {
        return vehicles;
    }

    /** Compares one project; faults begin with its name. */
    void compare(String name, String text) {
        List<Source> sources = List.of(reader.read(name, text.getBytes(StandardCharsets.UTF_8)));
        sources.getFirst().problems().forEach(each -> faults.add(name + ": not read: " + each));
        Project project = Project.link(sources);
        Platform platform = project.platforms().get("orrin").platform();
        List<Map<String, String>> possible = new EveryVehicle(platform).possible();
        Report report = check(project);
        Map<Finding, Set<Map<String, String>>> affected = new LinkedHashMap<>();
        report.findings().forEach(each -> affected.put(each, affected(name, each, possible)));
        Map<List<Source>, Set<String>> known = new HashMap<>();
        for (Map<String, String> vehicle : possible) {
            vehicles++;
            Set<String> at = new TreeSet<>();
            affected.forEach((finding, which) -> {
                if (compared.contains(finding.rule()) && which.contains(vehicle)) {
                    at.add(key(finding));
                }
            });
            Set<String> alone = known.computeIfAbsent(OneVehicle.of(sources, vehicle), this::alone);
            alone.forEach(key -> spoke.merge(key.substring(0, key.indexOf(' ')), 1, Integer::sum));
            differ(name, vehicle, at, alone);
        }
        new Coverage(sources.getFirst(), possible).faults(affected).forEach(each -> faults.add(name + ": " + each));
    }

    /**
     * Rules that judge what is stated for one vehicle by what is stated for others. What they find in a vehicle on its
     * own they must find among all; the other way round they may find more: terminals that are stated for some vehicles
     * only, a fit that cannot be proved of one drawing for want of another, and a wire behind a fuse, which is judged
     * in the hottest zone and the fullest bundle of all vehicles that have it; its notes are not compared.
     */
    private static final Set<String> ACROSS_VEHICLES = Set.of("cavity-without-terminal", "fit-not-proved",
            "fuse-exceeds-wire");

    private void differ(String name, Map<String, String> vehicle, Set<String> at, Set<String> alone) {
        Set<String> more = new TreeSet<>(at);
        more.removeAll(alone);
        more.removeIf(key -> ACROSS_VEHICLES.contains(key.substring(0, key.indexOf(' '))));
        Set<String> less = new TreeSet<>(alone);
        less.removeAll(at);
        more.forEach(each -> faults.add(name + ": " + each + ": of all, not of it alone: " + vehicle.values()));
        less.forEach(each -> faults.add(name + ": " + each + ": of it alone, not of all: " + vehicle.values()));
    }

    private Report check(Project project) {
        return engine.check(project, Settings.TIMELESS, Cancel.NEVER, Progress.NONE);
    }

    private Set<String> alone(List<Source> sources) {
        Set<String> keys = new HashSet<>(Unmated.in(sources));
        for (Finding finding : check(Project.link(sources)).findings()) {
            if (compared.contains(finding.rule()) && !key(finding).matches("fuse-exceeds-wire .* as NOTE")) {
                keys.add(key(finding));
            }
        }
        return keys;
    }

    /** A finding that somebody accepted stays one. */
    private static String key(Finding finding) {
        if (finding.rule().equals("fuse-exceeds-wire")) {
            return finding.rule() + " on " + finding.element()
                    + (finding.severity() == Severity.NOTE ? " as NOTE" : "");
        }
        return finding.rule() + " on " + finding.element() + " as " + finding.severity()
                + finding.acceptance().map(each -> ", accepted").orElse("");
    }

    /** The vehicles of a finding by its condition, its words and its count, which must agree. */
    private Set<Map<String, String>> affected(String name, Finding finding, List<Map<String, String>> possible) {
        Set<Map<String, String>> which = new HashSet<>();
        if (finding.affected().isEmpty()) {
            return which;
        }
        Finding.Affected affected = finding.affected().get();
        Condition condition = affected.condition().orElseThrow();
        Vehicles all = condition.vehicles();
        Predicate<Map<String, String>> words = Sentence.of(affected.words());
        for (Map<String, String> vehicle : possible) {
            Condition one = all.where(new Assignment(vehicle));
            boolean holds = one.implies(condition);
            if (holds) {
                which.add(vehicle);
            }
            if (holds != words.test(vehicle)) {
                faults.add(name + ": " + key(finding) + ": \"" + affected.words() + "\" is wrong of "
                        + vehicle.values());
            }
        }
        String tally = tally(which.size(), possible.size());
        if (!affected.tally().equals(tally) || affected.bounded()) {
            faults.add(name + ": " + key(finding) + ": " + affected.tally() + " instead of " + tally);
        }
        return which;
    }

    private static String tally(int some, int all) {
        String vehicles = all + (all == 1 ? " vehicle" : " vehicles");
        return some == all && all > 1 ? "all " + vehicles : some + " of " + vehicles;
    }
}
