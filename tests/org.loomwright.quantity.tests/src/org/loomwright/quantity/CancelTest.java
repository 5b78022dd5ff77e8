// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class CancelTest {
    @Test
    void checkThrowsOnceCancelled() {
        AtomicBoolean stop = new AtomicBoolean();
        Cancel cancel = stop::get;
        assertDoesNotThrow(cancel::check);
        assertDoesNotThrow(Cancel.NEVER::check);
        stop.set(true);
        Cancelled thrown = assertThrows(Cancelled.class, cancel::check);
        assertEquals(0, thrown.getStackTrace().length);
    }

    @Test
    void progressMayGoNowhere() {
        assertDoesNotThrow(() -> Progress.NONE.report("checking drawings", 1, 0));
    }
}
