// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicInteger;

/** Does pieces of work with several threads, the caller's among them. */
final class Crew {

    /** Below this many pieces, starting a thread takes longer than it saves. */
    private static final int WORTH_SHARING = 8;

    private Crew() {
    }

    /**
     * Does all pieces, each once, beginning with the first ones. When one throws, no further one is begun and the same
     * is thrown here.
     *
     * @param threads the most threads to use, at least 1
     */
    static void work(List<Runnable> pieces, int threads) {
        AtomicInteger next = new AtomicInteger();
        Runnable all = () -> {
            try {
                for (int i = next.getAndIncrement(); i < pieces.size(); i = next.getAndIncrement()) {
                    pieces.get(i).run();
                }
            } finally {
                next.addAndGet(pieces.size());
            }
        };
        List<FutureTask<Void>> others = new ArrayList<>();
        for (int i = 1; i < threads && pieces.size() >= WORTH_SHARING; i++) {
            FutureTask<Void> other = new FutureTask<>(all, null);
            others.add(other);
            Thread thread = new Thread(other, "rules " + i);
            thread.setDaemon(true);
            thread.start();
        }
        try {
            all.run();
        } finally {
            for (FutureTask<Void> other : others) {
                join(other);
            }
        }
    }

    private static void join(FutureTask<Void> other) {
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    other.get();
                    return;
                } catch (InterruptedException e) {
                    interrupted = true;
                }
            }
        } catch (ExecutionException e) {
            switch (e.getCause()) {
                case RuntimeException ours -> throw ours;
                case Error ours -> throw ours;
                default -> throw new IllegalStateException(e.getCause());
            }
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
