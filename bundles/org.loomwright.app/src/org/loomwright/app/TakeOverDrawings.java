// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.app.load.StockShelf;
import org.loomwright.compare.draft.Choice;
import org.loomwright.compare.draft.HarnessDraft;
import org.loomwright.compare.draft.TakeOver;
import org.loomwright.harness.Source;
import org.loomwright.harness.TextEdit;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;

/** Takes over into a written harness what its drawings connect and it does not. Writes nothing. */
public final class TakeOverDrawings {

    private final SourceReader reader;
    private final StockShelf shelf;

    public TakeOverDrawings(SourceReader reader) {
        this.reader = reader;
        this.shelf = new StockShelf(reader);
    }

    /**
     * A harness with what it lacked.
     *
     * @param harness it, stations and lengths of what is new still open
     * @param project the project with its new text
     * @param choices what was taken over, and what was left to the engineer
     */
    public record Taken(WiringView harness, Project project, List<Choice> choices) {

        public Taken {
            choices = List.copyOf(choices);
        }
    }

    /** Takes over; a harness whose text or drawings cannot be read as a whole stays as it is. */
    public Taken into(WiringView harness, Project project, Cancel cancel) {
        Taken same = new Taken(harness, project, List.of());
        List<WiringView> drawings = harness.covers().stream().flatMap(name -> project.wiring(name).stream()).toList();
        String file = harness.wiring().span().file();
        if (drawings.isEmpty() || HarnessDraft.trouble(drawings).isPresent() || isDamaged(project, file)
                || drawings.stream().anyMatch(each -> isDamaged(project, each.wiring().span().file()))) {
            return same;
        }
        String name = harness.name() + "_draft";
        while (project.wiring(name).isPresent() || project.platforms().containsKey(name)) {
            name += "_";
        }
        HarnessDraft draft = HarnessDraft.of(name, project, drawings, HarnessDraft.Variant.PLAIN, cancel);
        Source source = reader.read(name + ".loom", draft.text().getBytes(StandardCharsets.UTF_8));
        Project with = linked(project, Optional.of(source), Optional.empty());
        String text = project.text(file).orElseThrow();
        TakeOver taken = TakeOver.of(with, with.wiring(harness.name()).orElseThrow(), with.wiring(name).orElseThrow(),
                drawings.stream().map(each -> with.wiring(each.name()).orElseThrow()).toList(), text, cancel);
        if (taken.edits().isEmpty()) {
            return new Taken(harness, project, taken.choices());
        }
        String edited = TextEdit.apply(text, taken.edits());
        Source now = reader.read(file, (Formatter.format(text).equals(text) ? Formatter.format(edited) : edited)
                .getBytes(StandardCharsets.UTF_8));
        if (!now.problems().isEmpty()) {
            throw new IllegalStateException("what was taken over cannot be read: " + now.problems().getFirst());
        }
        Project linked = linked(project, Optional.empty(), Optional.of(now));
        return new Taken(linked.wiring(harness.name()).orElseThrow(), linked, taken.choices());
    }

    private static boolean isDamaged(Project project, String file) {
        return project.problems().stream().anyMatch(each -> each.span().file().equals(file));
    }

    private Project linked(Project project, Optional<Source> more, Optional<Source> instead) {
        List<Source> sources = new ArrayList<>(project.sources());
        instead.ifPresent(now -> sources.replaceAll(each -> each.file().equals(now.file()) ? now : each));
        more.ifPresent(sources::add);
        return Project.link(sources, shelf);
    }
}
