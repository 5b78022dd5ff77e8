// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.loomwright.harness.link.WireView;
import org.loomwright.quantity.Cancel;

/** Takes in what one rule finds in one target. For one thread. */
public final class Findings {

    private final RuleInfo info;
    private final Predicate<String> drawing;
    private final Cancel cancel;
    private final List<Draft> drafts = new ArrayList<>();

    private final Writing writing;

    Findings(RuleInfo info, Predicate<String> drawing, Writing writing, Cancel cancel) {
        this.info = info;
        this.writing = writing;
        this.drawing = drawing;
        this.cancel = cancel;
    }

    /**
     * Begins a finding.
     *
     * @param owner   name of the drawing, harness or platform that the element belongs to
     * @param element name of the element in it; empty for the owner as a whole
     * @param subject the element for people: {@code wire 12b}
     */
    public Draft about(String owner, String element, String subject) {
        boolean inherited = info.kind() == RuleInfo.Kind.ENGINEERING && drawing.test(owner);
        return new Draft(this, info, element.isEmpty() ? owner : owner + ":" + element,
                element.isEmpty() ? subject : subject + " of " + owner, inherited);
    }

    /** Begins a finding about a wire. */
    public Draft about(WireView wire) {
        return about(wire.owner(), wire.label(), "wire " + wire.label());
    }

    /** Changes of what is written, to be proposed. */
    public Writing writing() {
        return writing;
    }

    /** What a long computation asks whether the check was cancelled. */
    public Cancel cancel() {
        return cancel;
    }

    /** Throws when the check was cancelled; a rule calls it now and then in a long search. */
    public void checkCancelled() {
        cancel.check();
    }

    void add(Draft draft) {
        if (draft.condition.isEmpty() || !draft.condition.get().isNever()) {
            drafts.add(draft);
        }
    }

    List<Draft> drafts() {
        return drafts;
    }
}
