// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.project;

/** The text that a new drawing or harness begins with. */
public final class DrawingText {

    private DrawingText() {
    }

    /**
     * A drawing or harness without content; what is not known is left out.
     *
     * @param harness  true for a harness of ours
     * @param title    words for people; may be empty
     * @param platform name of its platform; may be empty
     * @param position name of the position that it fills; may be empty
     */
    public static String of(boolean harness, String name, String title, String platform, String position) {
        StringBuilder text = new StringBuilder(harness ? "harness " : "drawing ").append(name);
        if (!title.isEmpty()) {
            text.append(" \"").append(title.replace("\\", "\\\\").replace("\"", "\\\"")).append('"');
        }
        if (!platform.isEmpty()) {
            text.append(" of ").append(platform);
        }
        if (!position.isEmpty()) {
            text.append(" fills ").append(position);
        }
        text.append(" {\n");
        if (harness) {
            text.append("    // covers: the drawings that it replaces\n    serviceLoop 40 mm\n");
        } else {
            text.append("    // sheet \"NUMBER\" issue \"ISSUE\": where it was read from\n");
        }
        return text.append("    // datum, trunk, branches, connectors, circuits\n}\n").toString();
    }
}
