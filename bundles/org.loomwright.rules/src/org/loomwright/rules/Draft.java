// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Part;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/**
 * A finding while a rule writes it. Its sentence names no vehicles: they are in the condition, so that findings that
 * are equal but for their vehicles can be joined.
 */
public final class Draft {

    private final Findings findings;
    final RuleInfo info;
    final String element;
    final String subject;
    final List<String> derivation = new ArrayList<>();
    private final Set<Finding.Label> related = new LinkedHashSet<>();
    final List<Finding.Fix> fixes = new ArrayList<>();
    Severity severity;
    boolean inherited;
    boolean bounded;
    Optional<Condition> condition = Optional.empty();
    Finding.Label place = new Finding.Label(Span.NONE, "");
    String sentence = "";
    String advice = "";
    String key = "";
    private String memory = "";

    Draft(Findings findings, RuleInfo info, String element, String subject, boolean inherited) {
        this.findings = findings;
        this.info = info;
        this.element = element;
        this.subject = subject;
        this.inherited = inherited;
        this.severity = info.severity();
    }

    /** Sets the vehicles for which it holds. A draft that holds for none is dropped when it is reported. */
    public Draft when(Condition vehicles) {
        condition = Optional.of(vehicles);
        return this;
    }

    /** Says what is wrong, in one sentence without vehicles and without full stop. */
    public Draft says(String words) {
        sentence = words;
        return this;
    }

    /** Sets the span at fault. */
    public Draft at(Span span, String label) {
        place = new Finding.Label(span, label);
        return this;
    }

    /** Adds a span that belongs to it; one that nothing states is left out. */
    public Draft see(Span span, String label) {
        if (!span.equals(Span.NONE)) {
            related.add(new Finding.Label(span, label));
        }
        return this;
    }

    /** The spans that belong to it, each once, in the order in which they were added. */
    List<Finding.Label> related() {
        return List.copyOf(related);
    }

    /** Adds a step of the derivation. */
    public Draft step(String words) {
        derivation.add(words);
        return this;
    }

    /** Says what to try. */
    public Draft advise(String words) {
        advice = words;
        return this;
    }

    /** Offers a change of the text that leaves no doubt. */
    public Draft fix(String title, TextEdit... edits) {
        fixes.add(new Finding.Fix(title, List.of(edits)));
        return this;
    }

    /** Offers a change of the text that may be the right one. */
    public Draft guess(String title, TextEdit... edits) {
        fixes.add(new Finding.Fix(title, List.of(edits), false));
        return this;
    }

    /** Offers a change of the text that may be the right one, where there is one. */
    public Draft guess(String title, Optional<TextEdit> edit) {
        edit.ifPresent(each -> guess(title, each));
        return this;
    }

    /** Weighs it otherwise than the rule's other findings. */
    public Draft weighs(Severity other) {
        severity = other;
        return this;
    }

    /** Says that something of ours has a part in it although its element is the factory's. */
    public Draft ours() {
        inherited = false;
        return this;
    }

    /** Says that nothing of ours has a part in it although its element is the vehicle's own. */
    public Draft factory() {
        inherited = info.kind() == RuleInfo.Kind.ENGINEERING;
        return this;
    }

    /**
     * Says where a figure comes from on which it rests. A figure from memory never decides alone: what rests on one is
     * a note that says so.
     */
    public Draft rests(String source) {
        memory = memory.isEmpty() && Part.fromMemory(source) ? source : memory;
        return this;
    }

    /** Tells it from other findings of the rule on the same element; goes into the fingerprint. */
    public Draft key(String words) {
        key = words;
        return this;
    }

    /** Says that the search for vehicles was cut off. */
    public Draft bounded() {
        bounded = true;
        return this;
    }

    /** Hands it in. */
    public void report() {
        if (!memory.isEmpty() && severity != Severity.NOTE) {
            severity = Severity.NOTE;
            sentence = "not judged, a figure is from memory: " + sentence;
            derivation.add("from memory: " + memory);
        }
        findings.add(this);
    }
}
