// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.document;

import java.util.List;

/**
 * A drawing.
 *
 * @param width  in mm
 * @param height in mm
 * @param marks  what is drawn, the hindmost first
 */
public record Drawing(double width, double height, List<Mark> marks) {

    public Drawing {
        marks = List.copyOf(marks);
    }
}
