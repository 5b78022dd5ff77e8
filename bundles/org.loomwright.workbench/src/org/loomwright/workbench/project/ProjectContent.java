// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

/** What a new project begins with. */
public enum ProjectContent {
    /** One file with a platform to be filled in. */
    PLATFORM("&A first platform, to be filled in"),
    /** The invented small car that the documentation uses throughout. */
    ORRIN("The O&rrin 1200: an invented car with its drawings, harnesses and kits, as an example"),
    /** Nothing. */
    NOTHING("N&othing");

    private final String words;

    ProjectContent(String words) {
        this.words = words;
    }

    /** The words for people, with the letter that chooses it. */
    String words() {
        return words;
    }
}
