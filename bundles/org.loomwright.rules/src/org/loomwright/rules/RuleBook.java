// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The rules of a check, in order. A new rule is one class and one line in the list that this is made of.
 *
 * @param rules the rules
 * @param aside ids of rules that there are but that are not asked; waivers of them are not judged
 */
public record RuleBook(List<Rule<?>> rules, Set<String> aside) {

    public RuleBook {
        rules = List.copyOf(rules);
        aside = Set.copyOf(aside);
    }

    /** Takes all rules that there are. */
    public RuleBook(List<Rule<?>> rules) {
        this(rules, Set.of());
    }

    /**
     * Returns some of the rules, in the same order; the others are set aside.
     *
     * @throws IllegalArgumentException for an id that no rule of the book has
     */
    public RuleBook part(Set<String> ids) {
        Set<String> others = new TreeSet<>(aside);
        Set<String> unknown = new TreeSet<>(ids);
        List<Rule<?>> some = new ArrayList<>();
        for (Rule<?> rule : rules) {
            if (unknown.remove(rule.info().id())) {
                some.add(rule);
            } else {
                others.add(rule.info().id());
            }
        }
        if (!unknown.isEmpty()) {
            throw new IllegalArgumentException("no such rules: " + unknown);
        }
        return new RuleBook(some, others);
    }

    /** Returns all that can be reported: the rules and what the engine itself watches over, in order. */
    public List<RuleInfo> infos() {
        List<RuleInfo> infos = new ArrayList<>();
        rules.forEach(rule -> infos.add(rule.info()));
        infos.addAll(Acceptances.RULES);
        return List.copyOf(infos);
    }

    /** Returns what is known about the rule of that id; empty for the code of a problem of the text. */
    public Optional<RuleInfo> info(String id) {
        return infos().stream().filter(info -> info.id().equals(id)).findFirst();
    }
}
