// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import org.eclipse.lsp4j.ProgressParams;
import org.eclipse.lsp4j.WorkDoneProgressBegin;
import org.eclipse.lsp4j.WorkDoneProgressCreateParams;
import org.eclipse.lsp4j.WorkDoneProgressEnd;
import org.eclipse.lsp4j.WorkDoneProgressNotification;
import org.eclipse.lsp4j.WorkDoneProgressReport;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.LanguageClient;

/**
 * Tells a client how far something long is, project by project: nothing of what is over soon, and of the rest a
 * beginning, whole per cents and an end. Safe for use by several threads.
 */
final class Progresses {

    private final LanguageClient client;
    private final Duration patience;
    private final Map<Path, Doing> doings = new HashMap<>();
    private int tokens;

    /**
     * @param client   hears of it; it must have said that it can
     * @param patience what takes less is not told
     */
    Progresses(LanguageClient client, Duration patience) {
        this.client = client;
        this.patience = patience;
    }

    /** {@code done} of {@code total}; both 0 when it is over. */
    synchronized void told(Path project, String what, long done, long total) {
        if (done == 0 && total == 0) {
            Doing over = doings.remove(project);
            if (over != null) {
                over.end();
            }
        } else {
            doings.computeIfAbsent(project, Doing::new).at(what, total == 0 ? 0 : (int) (100 * done / total));
        }
    }

    /** Something long that goes on in a project. */
    private final class Doing {

        private final Path project;
        private final long since = System.nanoTime();
        private String token;
        private String what = "";
        private int percent;
        private boolean begun;
        private boolean over;

        Doing(Path project) {
            this.project = project;
        }

        private void at(String now, int hundredths) {
            boolean moved = hundredths != percent || !now.equals(what);
            what = now;
            percent = hundredths;
            if (token == null && System.nanoTime() - since >= patience.toNanos()) {
                token = "loomwright-" + ++tokens;
                client.createProgress(new WorkDoneProgressCreateParams(Either.forLeft(token))).thenRun(this::begin);
            } else if (begun && moved) {
                WorkDoneProgressReport report = new WorkDoneProgressReport();
                report.setMessage(what);
                report.setPercentage(percent);
                send(report);
            }
        }

        /** The client knows the token; only now may it be used. */
        private void begin() {
            synchronized (Progresses.this) {
                if (!over) {
                    begun = true;
                    WorkDoneProgressBegin begin = new WorkDoneProgressBegin();
                    begin.setTitle("Checking " + project.getFileName());
                    begin.setMessage(what);
                    begin.setPercentage(percent);
                    begin.setCancellable(false);
                    send(begin);
                }
            }
        }

        private void end() {
            over = true;
            if (begun) {
                send(new WorkDoneProgressEnd());
            }
        }

        private void send(WorkDoneProgressNotification notification) {
            client.notifyProgress(new ProgressParams(Either.forLeft(token), Either.forLeft(notification)));
        }
    }
}
