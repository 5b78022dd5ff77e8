// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.loomwright.harness.Part;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.RuleInfo.Scope;

/** While one thread solves circuits, which takes long, the others do what does not need them. */
class SolvingTest {

    private static final long PATIENCE_S = 30;

    private record Sample(RuleInfo info, Consumer<Target.OfNetwork> work) implements Rule<Target.OfNetwork> {

        Sample(String id, Scope scope, Consumer<Target.OfNetwork> work) {
            this(new RuleInfo(id, "A sample?", Severity.ERROR, RuleInfo.Kind.ENGINEERING, scope, ""), work);
        }

        @Override
        public Class<Target.OfNetwork> target() {
            return Target.OfNetwork.class;
        }

        @Override
        public void check(Target.OfNetwork target, Findings findings) {
            work.accept(target);
        }
    }

    @Test
    void connectionsAreToBeHadWhileCircuitsAreSolved() {
        CountDownLatch others = new CountDownLatch(8);
        AtomicInteger solving = new AtomicInteger();
        AtomicInteger most = new AtomicInteger();
        Set<Thread> solvers = ConcurrentHashMap.newKeySet();
        List<Rule<?>> rules = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            rules.add(new Sample("solves-" + i, Scope.OPERATING_POINTS, target -> {
                solvers.add(Thread.currentThread());
                most.accumulateAndGet(solving.incrementAndGet(), Math::max);
                assertTrue(done(others), "a rule about connections waits for circuits");
                target.circuits(Cancel.NEVER);
                solving.decrementAndGet();
            }));
        }
        for (int i = 0; i < 8; i++) {
            rules.add(new Sample("connects-" + i, Scope.PROTECTION_TREE, target -> {
                target.connections();
                others.countDown();
            }));
        }
        new BookRuleEngine(new RuleBook(rules), 2).check(network().project(), Settings.TIMELESS, Cancel.NEVER,
                Progress.NONE);
        assertEquals(0, others.getCount());
        assertEquals(1, most.get());
        assertEquals(1, solvers.size(), "the rest of the threads would wait for what one solves");
    }

    @Test
    void whatFailedIsMadeByTheNextWhoAsks() {
        Once<String> once = new Once<>();
        assertThrows(IllegalStateException.class, () -> once.get(() -> {
            throw new IllegalStateException("not now");
        }));
        assertEquals("first", once.get(() -> "first"));
        assertEquals("first", once.get(() -> "second"));
        once.release();
        assertEquals("third", once.get(() -> "third"));
    }

    private static boolean done(CountDownLatch latch) {
        try {
            return latch.await(PATIENCE_S, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private static Bench network() {
        return new Bench().place("box", "").part(Part.Kind.HOUSING, "way2", "1", "2")
                .drawing("plain", "front", "", wiring -> wiring.connector("J1", "way2", "box", "", "")
                        .circuit("1", "", circuit -> circuit.wire("a", "", wire -> wire.from("J1:1", "")
                                .to("J1:2", ""))));
    }
}
