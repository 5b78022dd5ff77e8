// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.compare;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.loomwright.app.BadCall;
import org.loomwright.app.CompareRevisions;
import org.loomwright.app.CompareRevisions.Compared;
import org.loomwright.app.OpenProject;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.compare.Aspect;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.consequence.Effect;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.BookRuleEngine;
import org.loomwright.rules.Settings;
import org.loomwright.rules.standard.StandardRules;
import org.loomwright.workbench.guard.OffUi;

/**
 * What is different between two sides, and what follows, as a tree: aspects with their changes, then consequences.
 *
 * @param compared what came of the comparison
 * @param groups   the tree
 */
public record Changes(Compared compared, List<Group> groups) {

    public Changes {
        groups = List.copyOf(groups);
    }

    /** A branch of the tree: {@code electrical (must be reviewed), 3}. */
    public record Group(String title, List<Entry> entries) {

        public Group {
            entries = List.copyOf(entries);
        }
    }

    /** A leaf of the tree: a change, or a consequence. */
    public sealed interface Entry {

        /** What it says. */
        String words();

        /** The vehicles that feel it. */
        String vehicles();

        /** One change. */
        record Changed(Change change) implements Entry {

            @Override
            public String words() {
                return change.kind().words() + ": " + change.sentence();
            }

            @Override
            public String vehicles() {
                return change.felt().words() + (change.felt().tally().isEmpty() ? ""
                        : " (" + change.felt().tally() + ")");
            }
        }

        /** Something that follows. */
        record Follows(Effect.Line line) implements Entry {

            @Override
            public String words() {
                String figures = line.before().isEmpty() || line.after().isEmpty() ? line.before() + line.after()
                        : line.before() + " \u2192 " + line.after();
                String mark = line.direction() == Effect.Direction.OTHER ? "" : line.direction().words() + ": ";
                return mark + line.subject() + ": " + (line.what() + " " + figures).strip();
            }

            @Override
            public String vehicles() {
                return line.vehicles();
            }
        }
    }

    /**
     * Compares the sides.
     *
     * @throws BadCall if nothing of a side can be read
     */
    static Changes of(Sides sides, SourceReader reader, int threads, Cancel cancel, Progress progress) throws BadCall {
        OffUi.require("comparing");
        Opened old = open(sides.old(), sides.title(), reader, threads, cancel, progress);
        Opened now = open(sides.now(), sides.title(), reader, threads, cancel, progress);
        Compared compared = CompareRevisions.whole(OffUi.rules(new BookRuleEngine(StandardRules.book(), threads)),
                Settings.on(LocalDate.now()), false).compare(old, now, cancel, progress);
        return new Changes(compared, groups(compared, Set.of(Aspect.values())));
    }

    /** Returns the same with the changes of some aspects only. */
    Changes only(Set<Aspect> aspects) {
        return new Changes(compared, groups(compared, aspects));
    }

    private static Opened open(Map<String, byte[]> files, String name, SourceReader reader, int threads,
            Cancel cancel, Progress progress) throws BadCall {
        List<Input> inputs = new ArrayList<>();
        new TreeMap<>(files).forEach((file, bytes) -> inputs.add(Input.of(file, bytes)));
        return new OpenProject(reader, threads).open(new ProjectPlace(name, Path.of(""), "", inputs),
                cancel, progress);
    }

    private static List<Group> groups(Compared compared, Set<Aspect> aspects) {
        List<Group> groups = new ArrayList<>();
        for (Aspect aspect : Aspect.values()) {
            List<Entry> changes = compared.comparison().changes().stream().filter(each -> each.aspect() == aspect)
                    .map(each -> (Entry) new Entry.Changed(each)).toList();
            if (!changes.isEmpty() && aspects.contains(aspect)) {
                groups.add(new Group(aspect.words() + " (" + aspect.attention().words() + "), " + changes.size(),
                        changes));
            }
        }
        for (Effect effect : compared.effects()) {
            groups.add(new Group("follows: " + effect.title() + ", " + effect.lines().size(),
                    effect.lines().stream().map(each -> (Entry) new Entry.Follows(each)).toList()));
        }
        return groups;
    }
}
