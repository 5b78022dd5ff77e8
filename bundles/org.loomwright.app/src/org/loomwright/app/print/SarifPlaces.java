// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.loomwright.app.Checked;
import org.loomwright.harness.Span;
import org.loomwright.rules.Finding;

/**
 * Places in files after SARIF 2.1.0 (OASIS, 2020 with errata of 2023): section 3.4 for the names of files, 3.29 and
 * 3.30 for the regions. Files below the folder of the call are named relative to it, others in full.
 */
final class SarifPlaces {

    /** Stands for the folder in which the call was made. */
    static final String ROOT = "%SRCROOT%";

    private static final String KEPT = "-._~/!$&'()*+,;=@";

    private final JsonWriter json;
    private final Checked checked;

    SarifPlaces(JsonWriter json, Checked checked) {
        this.json = json;
        this.checked = checked;
    }

    /** Writes an object that names a file and, when its text could be read, a region of it. */
    void physical(Span span) throws IOException {
        json.beginObject();
        json.name("artifactLocation");
        artifact(span.file());
        if (!checked.texts().of(span.file()).isEmpty()) {
            json.name("region");
            region(span);
        }
        json.endObject();
    }

    /** Writes a location with what it has to do with the finding. */
    void location(Finding.Label label, int id) throws IOException {
        json.beginObject();
        json.name("id").value(id);
        json.name("physicalLocation");
        physical(label.span());
        if (!label.text().isEmpty()) {
            json.name("message");
            message(label.text());
        }
        json.endObject();
    }

    /** Writes an object that names a file. */
    void artifact(String file) throws IOException {
        json.beginObject();
        String name = checked.place().prefix() + file;
        if (isBelow(name)) {
            json.name("uri").value(encoded(name));
            json.name("uriBaseId").value(ROOT);
        } else {
            json.name("uri").value(checked.place().root().resolve(file).toAbsolutePath().normalize().toUri()
                    .toASCIIString());
        }
        json.endObject();
    }

    /** Writes a region: lines and columns from 1, the last column behind the last character; and characters from 0. */
    void region(Span span) throws IOException {
        String text = checked.texts().of(span.file());
        int end = Math.min(span.end(), text.length());
        int line = span.line();
        int start = span.offset() - (span.column() - 1);
        for (int at = text.indexOf('\n', span.offset()); at >= 0 && at < end; at = text.indexOf('\n', at + 1)) {
            line++;
            start = at + 1;
        }
        json.beginObject();
        json.name("startLine").value(span.line());
        json.name("startColumn").value(span.column());
        json.name("endLine").value(line);
        json.name("endColumn").value(Math.max(end, span.offset()) - start + 1);
        json.name("charOffset").value(span.offset());
        json.name("charLength").value(Math.max(end, span.offset()) - span.offset());
        json.endObject();
    }

    /** Writes a message; curly brackets are doubled, since single ones hold places for arguments (section 3.11.5). */
    void message(String words) throws IOException {
        message(json, words);
    }

    static void message(JsonWriter json, String words) throws IOException {
        json.beginObject();
        json.name("text").value(words.replace("{", "{{").replace("}", "}}"));
        json.endObject();
    }

    private static boolean isBelow(String name) {
        return !name.startsWith("/") && !name.startsWith("../") && !name.equals("..")
                && !(name.length() > 2 && name.charAt(1) == ':' && "/\\".indexOf(name.charAt(2)) >= 0);
    }

    /** The path of a relative reference after RFC 3986; a colon is encoded, so that nothing looks like a scheme. */
    static String encoded(String path) {
        StringBuilder uri = new StringBuilder(path.length());
        for (byte each : path.getBytes(StandardCharsets.UTF_8)) {
            char c = (char) (each & 0xff);
            if (c < 0x80 && (Character.isLetterOrDigit(c) || KEPT.indexOf(c) >= 0)) {
                uri.append(c);
            } else {
                uri.append('%').append(Character.toUpperCase(Character.forDigit(c >> 4, 16)))
                        .append(Character.toUpperCase(Character.forDigit(c & 15, 16)));
            }
        }
        return uri.toString();
    }
}
