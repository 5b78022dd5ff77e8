// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.names;

import java.util.List;
import org.loomwright.lang.words.Line;
import org.loomwright.lang.words.WordLines;

/**
 * What stands around a line: the names of the blocks that it is in, itself included. Each is empty where there is none.
 *
 * @param wiring    drawing or harness
 * @param platform  the platform that it is in, or that its drawing, harness, kit or practice belongs to
 * @param part      catalogue part
 * @param circuit   circuit
 * @param wire      wire
 * @param connector connector
 * @param run       trunk or branch
 * @param device    device
 */
public record Around(String wiring, String platform, String part, String circuit, String wire, String connector,
        String run, String device) {

    /** Around a line. */
    public static Around of(WordLines lines, Line line) {
        return of(lines.outwards(line));
    }

    /** Around the innermost of some lines, from the inside out. */
    public static Around of(List<Line> path) {
        String wiring = "";
        String platform = "";
        String part = "";
        String circuit = "";
        String wire = "";
        String connector = "";
        String run = "";
        String device = "";
        for (Line each : path) {
            String name = each.text("name");
            switch (each.rule()) {
                case "Drawing", "Harness" -> {
                    wiring = name;
                    platform = each.text("platform");
                }
                case "Kit", "Practice" -> platform = each.text("platform");
                case "Platform" -> platform = name;
                case "Part" -> part = name;
                case "Circuit" -> circuit = name;
                case "Wire" -> wire = name;
                case "Connector" -> connector = name;
                case "Trunk", "Branch" -> run = name;
                case "Device" -> device = name;
                default -> { }
            }
        }
        return new Around(wiring, platform, part, circuit, wire, connector, run, device);
    }
}
