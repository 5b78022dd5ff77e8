// SPDX-License-Identifier: EPL-2.0
/**
 * What a rule is, what a finding is, and the engine that runs rules over a project.
 *
 * <p>A rule is a small class with a {@link org.loomwright.rules.RuleInfo} and one method; it stands in one
 * {@link org.loomwright.rules.RuleBook}. Findings name the vehicles for which they hold; equal findings are joined.
 * {@link org.loomwright.rules.RuleEngine} is the way in. Text, SARIF, JUnit and markers only render what it returns.
 */
package org.loomwright.rules;
