// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/**
 * Standard output. Whoever reads it may stop reading, as {@code head} does: the rest is dropped without a word. Any
 * other failure, such as a full disk, is kept and can be asked for.
 */
final class ResultStream extends OutputStream {

    private final OutputStream out;
    private boolean closed;
    private String failure;

    ResultStream(OutputStream out) {
        this.out = new BufferedOutputStream(out, 1 << 16);
    }

    /** Why writing failed; empty when it did not, and when the reader just stopped reading. */
    Optional<String> failure() {
        return Optional.ofNullable(failure);
    }

    @Override
    public void write(int one) {
        write(new byte[] {(byte) one}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) {
        if (closed) {
            return;
        }
        try {
            out.write(bytes, from, count);
        } catch (IOException e) {
            stop(e);
        }
    }

    @Override
    public void flush() {
        if (closed) {
            return;
        }
        try {
            out.flush();
        } catch (IOException e) {
            stop(e);
        }
    }

    private void stop(IOException e) {
        closed = true;
        String reason = String.valueOf(e.getMessage());
        failure = reason.contains("roken pipe") || reason.contains("pipe is being closed") ? null : reason;
    }
}
