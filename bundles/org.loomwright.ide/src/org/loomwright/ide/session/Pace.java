// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import java.time.Duration;

/**
 * How patient a workspace is.
 *
 * @param pause how long nobody has to type before all rules are asked
 * @param look  how often the disk is looked at for files that changed outside; zero for never
 */
public record Pace(Duration pause, Duration look) {

    /** What suits people. */
    public static final Pace USUAL = new Pace(Duration.ofMillis(250), Duration.ofSeconds(2));
}
