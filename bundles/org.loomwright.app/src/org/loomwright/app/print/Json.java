// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;

/** Makes a JSON text that a person can read as well: two spaces, LF, members in the order in which they are written. */
final class Json {

    private Json() {
    }

    /** What is written into a document. */
    interface Body {
        void write(JsonWriter json) throws IOException;
    }

    /** The text of one object, with a line end behind it. */
    static String object(Body body) {
        return object("  ", body);
    }

    /** The same without indents, for documents with thousands of objects: a member a line. */
    static String narrow(Body body) {
        return object("", body);
    }

    private static String object(String indent, Body body) {
        StringWriter text = new StringWriter();
        try (JsonWriter json = new JsonWriter(text)) {
            json.setFormattingStyle(FormattingStyle.PRETTY.withIndent(indent).withNewline("\n"));
            json.setHtmlSafe(false);
            json.beginObject();
            body.write(json);
            json.endObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.append('\n').toString();
    }
}
