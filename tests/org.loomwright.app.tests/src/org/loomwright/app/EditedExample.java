// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** An example of {@code docs/examples}, with some text in it replaced. */
public final class EditedExample {

    private final SourceReader reader;
    private final ProjectPlace place;

    public EditedExample(String name) {
        try {
            this.reader = Repository.reader();
            this.place = ProjectPlace.findOne(Repository.root().resolve("docs/examples"), name);
        } catch (BadCall e) {
            throw new IllegalStateException(e);
        }
    }

    private EditedExample(SourceReader reader, ProjectPlace place) {
        this.reader = reader;
        this.place = place;
    }

    /** The example with a text that stands once in one of its files replaced by another. */
    public EditedExample with(String file, String text, String instead) {
        List<Input> inputs = new ArrayList<>();
        for (Input input : place.inputs()) {
            inputs.add(input.name().equals(file) ? edited(input, text, instead) : input);
        }
        return new EditedExample(reader, new ProjectPlace(place.name(), place.root(), place.prefix(), inputs));
    }

    private static Input edited(Input input, String text, String instead) {
        try (InputStream bytes = input.content().open()) {
            String before = new String(bytes.readAllBytes(), StandardCharsets.UTF_8);
            if (before.split(Pattern.quote(text), -1).length != 2) {
                throw new IllegalArgumentException(input.name() + " does not have once: " + text);
            }
            return Input.of(input.name(), before.replace(text, instead).getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    public OpenProject.Opened open() throws BadCall {
        return new OpenProject(reader, 1).open(place, Cancel.NEVER, Progress.NONE);
    }
}
