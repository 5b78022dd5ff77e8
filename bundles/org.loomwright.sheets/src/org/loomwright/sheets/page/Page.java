// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.page;

import java.util.List;
import org.loomwright.sheets.document.Mark;

/**
 * A page that is laid out.
 *
 * @param width  in mm
 * @param height in mm
 * @param marks  what is on it, the hindmost first
 */
public record Page(double width, double height, List<Mark> marks) {

    public Page {
        marks = List.copyOf(marks);
    }
}
