// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.eclipse.swt.widgets.Display;

/**
 * Asks the thread that draws again and again whether it is free. When it does not answer for more than 200 ms, looks
 * at what it does, and remembers which of our frames it was in. Run by hand; decides nothing.
 */
final class HoldSampler implements AutoCloseable {

    /** A thread that draws must be free again within this time, in milliseconds. */
    static final long MOST = 200;

    private static final long STEP = 10;

    private final Display display;
    private final Thread drawing;
    private final List<Hold> holds = new ArrayList<>();
    private final Thread sampler = new Thread(this::sample, "Sampling what holds the window");
    private volatile boolean ended;

    /**
     * One time that the thread did not answer.
     *
     * @param wall   how long, in milliseconds
     * @param busy   processor time that the thread took meanwhile, in milliseconds
     * @param frames our frames that were found on top, the most frequent first, with how often; empty when it was none
     */
    record Hold(long wall, long busy, List<String> frames) {
    }

    HoldSampler(Display display) {
        this.display = display;
        this.drawing = display.getThread();
        sampler.setDaemon(true);
        sampler.start();
    }

    @Override
    public void close() throws InterruptedException {
        ended = true;
        sampler.join();
    }

    synchronized List<Hold> holds() {
        return List.copyOf(holds);
    }

    private void sample() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        try {
            while (!ended) {
                AtomicLong answered = new AtomicLong();
                List<String> frames = new ArrayList<>();
                long cpu = threads.getThreadCpuTime(drawing.threadId());
                long asked = System.nanoTime();
                display.asyncExec(() -> answered.set(System.nanoTime()));
                while (answered.get() == 0 && !ended) {
                    Thread.sleep(STEP);
                    ours(drawing.getStackTrace()).ifPresent(frames::add);
                }
                long wall = (System.nanoTime() - asked) / 1_000_000;
                if (wall > MOST) {
                    long busy = (threads.getThreadCpuTime(drawing.threadId()) - cpu) / 1_000_000;
                    add(new Hold(wall, busy, counted(frames)));
                }
                Thread.sleep(STEP);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private synchronized void add(Hold hold) {
        holds.add(hold);
    }

    /** The frame of the project that stands highest; what the tests do themselves is none. */
    private static Optional<String> ours(StackTraceElement[] stack) {
        return Arrays.stream(stack).filter(each -> each.getClassName().startsWith("org.loomwright.")
                && !each.getClassName().matches("org\\.loomwright\\.workbench\\.[A-Z].*")).findFirst()
                .map(StackTraceElement::toString);
    }

    private static List<String> counted(List<String> frames) {
        return frames.stream().collect(Collectors.groupingBy(each -> each, Collectors.counting())).entrySet().stream()
                .sorted((a, b) -> Long.compare(b.getValue(), a.getValue())).limit(5)
                .map(each -> each.getValue() + " x " + each.getKey()).toList();
    }
}
