// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.function.IntFunction;

/** Does pieces of work with several threads, the caller's among them. */
final class Crew {

    /** Below this many pieces, starting a thread takes longer than it saves. */
    private static final int WORTH_SHARING = 8;

    private Crew() {
    }

    /**
     * Does all pieces, each once. Each thread begins at a place of its own and goes round from there: neighbours often
     * need the same thing, and the second one to ask for it waits while it is worked out. When one throws, no further
     * one is begun and the same is thrown here.
     *
     * @param threads the most threads to use, at least 1
     */
    static void work(List<Runnable> pieces, int threads) {
        int size = pieces.size();
        AtomicIntegerArray taken = new AtomicIntegerArray(size);
        AtomicBoolean failed = new AtomicBoolean();
        IntFunction<Runnable> from = first -> () -> {
            boolean done = false;
            try {
                for (int i = 0; i < size && !failed.get(); i++) {
                    int piece = (first + i) % size;
                    if (taken.compareAndSet(piece, 0, 1)) {
                        pieces.get(piece).run();
                    }
                }
                done = true;
            } finally {
                failed.compareAndSet(false, !done);
            }
        };
        List<FutureTask<Void>> others = new ArrayList<>();
        for (int i = 1; i < threads && size >= WORTH_SHARING; i++) {
            FutureTask<Void> other = new FutureTask<>(from.apply((int) ((long) size * i / threads)), null);
            others.add(other);
            Thread thread = new Thread(other, "rules " + i);
            thread.setDaemon(true);
            thread.start();
        }
        try {
            from.apply(0).run();
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
