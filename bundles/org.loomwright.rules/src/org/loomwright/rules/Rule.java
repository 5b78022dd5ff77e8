// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

/**
 * One rule. It has no state of its own, so that one object serves every thread and every project.
 *
 * <p>A rule looks at everything that may exist in any vehicle of the target at once: what holds only in some vehicles
 * carries a condition, and a finding carries the condition of the vehicles it is about. A rule never looks at one
 * vehicle after the other.
 *
 * @param <T> what it looks at
 */
public interface Rule<T extends Target> {

    /** Returns what is known about the rule. */
    RuleInfo info();

    /** Returns the sort of target that it wants. */
    Class<T> target();

    /** Looks at one target and reports what it finds. Never throws for what a person wrote. */
    void check(T target, Findings findings);
}
