// SPDX-License-Identifier: EPL-2.0
package org.loomwright.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.TestPlan;

/**
 * Writes one line for each test that was tagged {@code outside} (itself or a container above it) and passed.
 *
 * <p>The file is named by the system property {@value #FILE}; without it nothing is written. JUnit finds this class
 * through {@code META-INF/services}. Thread contract: JUnit may report from several threads.
 */
public final class OutsideListener implements TestExecutionListener {

    /** The tag of a check against an outside reference. */
    public static final String TAG = "outside";

    /** The system property that names the file to write. */
    public static final String FILE = "loomwright.outside";

    private final Set<String> passed = new ConcurrentSkipListSet<>();
    private volatile TestPlan plan;

    @Override
    public void testPlanExecutionStarted(TestPlan started) {
        plan = started;
    }

    @Override
    public void executionFinished(TestIdentifier test, TestExecutionResult result) {
        if (test.isTest() && result.getStatus() == TestExecutionResult.Status.SUCCESSFUL && isOutside(test)) {
            passed.add(test.getUniqueId());
        }
    }

    @Override
    public void testPlanExecutionFinished(TestPlan finished) {
        String file = System.getProperty(FILE);
        if (file == null) {
            return;
        }
        try {
            Path path = Path.of(file);
            Files.createDirectories(path.toAbsolutePath().getParent());
            Files.write(path, passed);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private boolean isOutside(TestIdentifier test) {
        for (Optional<TestIdentifier> at = Optional.of(test); at.isPresent(); at = plan.getParent(at.get())) {
            if (at.get().getTags().stream().anyMatch(tag -> tag.getName().equals(TAG))) {
                return true;
            }
        }
        return false;
    }
}
