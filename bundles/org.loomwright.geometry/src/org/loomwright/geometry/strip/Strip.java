// SPDX-License-Identifier: EPL-2.0
package org.loomwright.geometry.strip;

import java.util.List;

/**
 * A strip. Coordinates are in units of the drawing, x to the right and y downwards; nothing lies outside of it, and no
 * two texts lie over each other.
 *
 * @param width  its width, words included
 * @param height its height
 * @param scale  units for a millimetre along a run
 * @param bars   trunks and branches, each trunk before what leaves it
 * @param posts  breakouts and barriers
 */
public record Strip(double width, double height, double scale, List<Bar> bars, List<Post> posts) {

    public Strip {
        bars = List.copyOf(bars);
        posts = List.copyOf(posts);
    }

    /**
     * A trunk or branch: a level line, which for a branch hangs on the run that it leaves.
     *
     * @param run    its name
     * @param trunk  true for a trunk
     * @param known  false when a length that it needs is not known; it is then drawn with a length that means nothing
     * @param x      where it begins
     * @param end    where it ends
     * @param y      its level
     * @param from   the level of the run that it leaves; that of its own for a trunk
     * @param text   what to write at its end: {@code bHeadL to headlampLeft, 280 mm}
     */
    public record Bar(String run, boolean trunk, boolean known, double x, double end, double y, double from,
            String text) {
    }

    /**
     * A breakout or barrier of a trunk, with its words above it.
     *
     * @param name    its name
     * @param run     the trunk that it is on
     * @param barrier true for a barrier
     * @param x       where it is
     * @param y       the level of the trunk
     * @param top     the level of its words
     * @param text    what to write there
     */
    public record Post(String name, String run, boolean barrier, double x, double y, double top, String text) {
    }
}
