// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The rules of a check, in order. A new rule is one class and one line in the list that this is made of.
 *
 * @param rules the rules
 */
public record RuleBook(List<Rule<?>> rules) {

    public RuleBook {
        rules = List.copyOf(rules);
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
