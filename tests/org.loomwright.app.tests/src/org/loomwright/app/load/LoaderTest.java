// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.loomwright.harness.Source;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Progress;

class LoaderTest {

    private static final SourceReader AS_TEXT = (name, bytes) ->
            new Source(name, new String(bytes, StandardCharsets.UTF_8), List.of(), List.of());

    private static List<Source> load(SourceReader reader, int threads, List<Input> inputs) {
        return new Loader(reader, threads).load(inputs, Cancel.NEVER, Progress.NONE).sources();
    }

    private static Input large(String name, String letter) {
        return Input.of(name, letter.repeat(100_000).getBytes(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 4, 16})
    void resultsAreInTheOrderOfTheInputsHoweverManyThreadsThereAre(int threads) {
        List<Input> inputs = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            String text = "content " + i + " ".repeat(i % 7 * 5_000);
            inputs.add(Input.of("f" + i, text.getBytes(StandardCharsets.UTF_8)));
        }
        List<Source> sources = load(AS_TEXT, threads, inputs);
        for (int i = 0; i < 50; i++) {
            assertEquals("f" + i, sources.get(i).file());
            assertTrue(sources.get(i).text().startsWith("content " + i + (i % 7 == 0 ? "" : " ")));
        }
    }

    @Test
    void severalThreadsReadAtTheSameTime() {
        CountDownLatch both = new CountDownLatch(2);
        Set<String> names = new ConcurrentSkipListSet<>();
        SourceReader meeting = (name, bytes) -> {
            both.countDown();
            try {
                assertTrue(both.await(20, TimeUnit.SECONDS), "the second file waits for the first");
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            names.add(Thread.currentThread().getName());
            return AS_TEXT.read(name, bytes);
        };
        load(meeting, 2, List.of(large("a", "a"), large("b", "b")));
        assertEquals(2, names.size());
    }

    @Test
    void aFileOfExactlyTheLargestSizeIsReadAndOneByteMoreIsRefusedUnread() {
        byte[] bytes = new byte[Loader.LARGEST];
        assertEquals(Loader.LARGEST, load(AS_TEXT, 1, List.of(Input.of("full", bytes))).getFirst().text().length());
        AtomicBoolean opened = new AtomicBoolean();
        Input more = new Input("more", Loader.LARGEST + 1L, () -> {
            opened.set(true);
            return InputStream.nullInputStream();
        });
        Source refused = load((name, content) -> {
            throw new AssertionError("parsed a file that is too large");
        }, 1, List.of(more)).getFirst();
        assertEquals(Loader.TOO_BIG, refused.problems().getFirst().code());
        assertEquals("more:1:1", refused.problems().getFirst().span().at());
        assertEquals("", refused.text());
    }

    @Test
    void aFileThatGrowsWhileItIsReadIsRefusedToo() {
        Input growing = new Input("growing", 10, () -> new InputStream() {
            @Override
            public int read() {
                return 'x';
            }

            @Override
            public int read(byte[] into, int from, int count) {
                return count;
            }
        });
        Source refused = load(AS_TEXT, 1, List.of(growing)).getFirst();
        assertEquals(Loader.TOO_BIG, refused.problems().getFirst().code());
    }

    @Test
    void whatCannotBeReadIsCountedAndKeepsItsName() {
        Input broken = new Input("broken", 5, () -> {
            throw new IOException("the disk is tired");
        });
        Loader.Loaded loaded = new Loader(AS_TEXT, 1).load(List.of(broken, Input.of("fine", new byte[0])), Cancel.NEVER,
                Progress.NONE);
        assertEquals(1, loaded.unreadable());
        assertEquals("broken", loaded.sources().getFirst().file());
        assertEquals("the file cannot be read: the disk is tired",
                loaded.sources().getFirst().problems().getFirst().message());
    }

    @Test
    void aFileThatMayNotBeReadSaysSo() {
        Input secret = new Input("secret", 5, () -> {
            throw new AccessDeniedException("/home/somebody/secret");
        });
        assertEquals("the file cannot be read: permission denied",
                load(AS_TEXT, 1, List.of(secret)).getFirst().problems().getFirst().message());
    }

    @Test
    void aFaultOfTheReaderReachesTheCallerUnchanged() {
        IllegalStateException fault = new IllegalStateException("ours");
        SourceReader broken = (name, bytes) -> {
            throw fault;
        };
        List<Input> inputs = List.of(large("a", "a"), large("b", "b"), large("c", "c"));
        assertSame(fault, assertThrows(IllegalStateException.class, () -> load(broken, 2, inputs)));
        assertSame(fault, assertThrows(IllegalStateException.class, () -> load(broken, 1, inputs)));
    }

    @Test
    void stopsWhenAsked() {
        Loader loader = new Loader(AS_TEXT, 2);
        List<Input> inputs = List.of(large("a", "a"), large("b", "b"));
        assertThrows(Cancelled.class, () -> loader.load(inputs, () -> true, Progress.NONE));
    }
}
