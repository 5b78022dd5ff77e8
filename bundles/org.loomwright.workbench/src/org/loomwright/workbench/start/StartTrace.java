// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.start;

import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicBoolean;
import org.eclipse.core.runtime.Platform;
import org.loomwright.workbench.Shared;

/**
 * Says on standard output when the first text stands in an editor with its findings, counted from the start of the
 * process. Only where the platform's tracing asks for it ({@code -debug FILE} with {@value #OPTION} in the file).
 */
public final class StartTrace {

    /** The option of the platform's tracing. */
    public static final String OPTION = Shared.ID + "/debug/start";

    private final AtomicBoolean told = new AtomicBoolean(!Platform.inDebugMode()
            || !Boolean.parseBoolean(Platform.getDebugOption(OPTION)));

    /** A text is shown with what was found in it. */
    public void shown(String file, int findings) {
        if (!told.getAndSet(true)) {
            ProcessHandle.Info self = ProcessHandle.current().info();
            System.out.println(file + " is shown with " + findings + " findings after "
                    + Duration.between(self.startInstant().orElseGet(Instant::now), Instant.now()).toMillis()
                    + " ms, of which processor time "
                    + self.totalCpuDuration().orElse(Duration.ZERO).toMillis() + " ms");
        }
    }
}
