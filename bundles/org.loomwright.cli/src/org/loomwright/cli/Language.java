// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.loomwright.lang.LoomReader;
import org.loomwright.lang.SourceReader;

/** The reader of sources. Setting it up goes on beside the understanding of the call, since both take a while. */
final class Language {

    /** No method reference: that would load the class before anybody asks. */
    private final FutureTask<SourceReader> reader = new FutureTask<>(() -> LoomReader.create());

    private Language() {
    }

    /** Starts to set it up. */
    static Language settingUp() {
        Language language = new Language();
        Thread thread = new Thread(language.reader, "language");
        thread.setDaemon(true);
        thread.start();
        return language;
    }

    /** Leaves it until somebody asks. */
    static Language whenAsked() {
        return new Language();
    }

    /** Waits until it is ready. */
    SourceReader reader() {
        reader.run(); // does nothing when it has been started
        try {
            return reader.get();
        } catch (ExecutionException e) {
            throw new IllegalStateException("the language could not be set up", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the language was set up", e);
        }
    }
}
