// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.Objects;

/**
 * What is known about a rule without running it. Its page and its two examples follow from its id.
 *
 * @param id       its stable name: {@code fuse-exceeds-wire}
 * @param title    what it asks, a few words
 * @param severity what a finding weighs unless it says otherwise
 * @param kind     whose mistakes it finds
 * @param scope    what it looks at in one go
 * @param basis    what it rests on: a published text, {@code common practice}, or the meaning of the language
 */
public record RuleInfo(String id, String title, Severity severity, Kind kind, Scope scope, String basis) {

    /** Whose mistakes a rule finds. */
    public enum Kind {
        /** Slips of whoever wrote the source: they count in drawings and harnesses alike. */
        TRANSCRIPTION,
        /** Choices of whoever made the harness: on a drawing they are the factory's, inherited and no fault of ours. */
        ENGINEERING
    }

    /** What a rule looks at in one go. */
    public enum Scope {
        CIRCUIT("circuit"),
        HOUSING("housing"),
        HARNESS("drawing or harness"),
        PROTECTION_TREE("protection tree"),
        /** Currents and voltages mode by mode; of many vehicles no more than a budget allows, and the rest is named. */
        OPERATING_POINTS("operating points"),
        PLATFORM("platform"),
        PROJECT("project");

        private final String words;

        Scope(String words) {
            this.words = words;
        }

        /** Returns the words for people. */
        public String words() {
            return words;
        }
    }

    public RuleInfo {
        Objects.requireNonNull(id);
        Objects.requireNonNull(title);
        Objects.requireNonNull(severity);
        Objects.requireNonNull(kind);
        Objects.requireNonNull(scope);
        Objects.requireNonNull(basis);
    }

    /** Returns whether it looks at every vehicle that can exist, however many these are, and never within a budget. */
    public boolean reachesEveryVehicle() {
        return scope != Scope.OPERATING_POINTS;
    }

    /** Returns the path of its page in the repository. */
    public String page() {
        return "docs/rules/" + id + ".md";
    }

    /** Returns the path of the example that breaks it, a file or, without the ending, a folder. */
    public String brokenExample() {
        return "docs/examples/broken/" + id + ".loom";
    }

    /** Returns the path of the same example after the smallest change that mends it. */
    public String mendedExample() {
        return "docs/examples/broken/" + id + "-mended.loom";
    }
}
