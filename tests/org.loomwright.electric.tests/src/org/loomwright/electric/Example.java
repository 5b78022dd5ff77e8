// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric;

import java.nio.file.Path;
import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.OpenProject;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.lang.LoomReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;

/** The examples of the repository, read as the command line reads them. */
public final class Example {

    private Example() {
    }

    /** The example of that name under {@code docs/examples}. */
    public static Project of(String name) throws BadCall {
        return at(Path.of(System.getProperty("loomwright.root")).normalize().resolve("docs/examples").resolve(name));
    }

    /** The project in a folder. */
    public static Project at(Path folder) throws BadCall {
        ProjectPlace place = ProjectPlace.findOne(folder.getParent(), folder.getFileName().toString());
        return new OpenProject(LoomReader.create(), 1).open(place, Cancel.NEVER, Progress.NONE).project();
    }

    /** The first vehicle of a platform that has some choices. */
    public static Condition vehicle(PlatformView platform, String words) {
        Condition all = platform.vehicles().all();
        for (String word : List.of(words.split(" "))) {
            Expression expression = word.matches("\\d+") ? new Expression.Compare("year", Relation.EQ, word)
                    : new Expression.Choice(word);
            all = all.and(platform.vehicles().resolve(expression).condition());
        }
        return platform.vehicles().where(all.example().orElseThrow());
    }
}
