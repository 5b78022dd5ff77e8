// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How {@code serve} ends: orderly, by a closed pipe, by nonsense. */
class ServeCallTest {

    @TempDir
    private Path folder;

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private int serve(String input) throws Exception {
        Door door = new Door(new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8), folder, Map.of(), false, false);
        ServeCommand command = new ServeCommand(() -> new ByteArrayInputStream(
                input.getBytes(StandardCharsets.UTF_8)));
        return command.run(Commands.line(Commands.spec(command)).parseArgs(), Language.whenAsked(), door);
    }

    private static String message(String json) {
        return "Content-Length: " + json.getBytes(StandardCharsets.UTF_8).length + "\r\n\r\n" + json;
    }

    private static final String HELLO = message("{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{"
            + "\"processId\":null,\"rootUri\":null,\"capabilities\":{}}}");
    private static final String GOODBYE = message("{\"jsonrpc\":\"2.0\",\"id\":2,\"method\":\"shutdown\"}")
            + message("{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");

    private String said() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void aClientThatShutsDownAndExitsEndsItWithoutAWord() throws Exception {
        assertEquals(Exit.FINE, serve(HELLO + GOODBYE));
        assertEquals("", said());
        assertTrue(out.toString(StandardCharsets.UTF_8).startsWith("Content-Length: "), "nothing but messages");
    }

    @Test
    void aClosedPipeEndsItWithOneLine() throws Exception {
        assertEquals(Exit.BAD_CALL, serve(HELLO));
        assertEquals("loomwright: the client closed its end without shutting down\n", said());
    }

    @Test
    void aClientThatLeavesInTheMiddleOfAMessageIsNamed() throws Exception {
        assertEquals(Exit.BAD_CALL, serve(HELLO + "Content-Length: 500\r\n\r\n{\"jsonrpc\""));
        assertEquals("loomwright: the input ends in the middle of a message\n", said());
    }

    @Test
    void nonsenseEndsItWithOneLine() throws Exception {
        assertEquals(Exit.BAD_CALL, serve("hello there\n\nhow are you\n"));
        assertEquals("loomwright: the input is no message of the protocol: a header such as Content-Length: 123 was "
                + "expected\n", said());
        err.reset();
        assertEquals(Exit.BAD_CALL, serve(HELLO + "Content-Length: 12\r\n\r\nno JSON here" + GOODBYE));
        assertEquals("loomwright: the input is no message of the protocol: what follows the header is no JSON\n",
                said());
        err.reset();
        assertEquals(Exit.BAD_CALL, serve(HELLO + "Content-Length: many\r\n\r\n{}"));
        assertEquals("loomwright: the input is no message of the protocol: its header states no usable length\n",
                said());
    }

    @Test
    void nothingAtAllIsAClosedPipe() throws Exception {
        assertEquals(Exit.BAD_CALL, serve(""));
        assertEquals("loomwright: the client closed its end without shutting down\n", said());
    }
}
