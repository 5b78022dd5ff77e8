// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.loomwright.compare.draft.AdaptorDraft;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.lang.Formatter;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;

/** Drafts a lead between two connectors of different years. Writes nothing. */
public final class DraftAdaptor {

    private final SourceReader reader;

    public DraftAdaptor(SourceReader reader) {
        this.reader = reader;
    }

    /**
     * A drafted lead.
     *
     * @param draft  the draft
     * @param source the same as a formatted file of its own
     */
    public record Drafted(AdaptorDraft draft, Source source) {
    }

    /**
     * Drafts one.
     *
     * @param one   connector of the first drawing, {@code DRAWING:CONNECTOR}; the lead takes its place
     * @param other connector of the second drawing
     * @throws BadCall when there is no such drawing or connector
     */
    public Drafted draft(Project project, String one, String other, String name, Cancel cancel) throws BadCall {
        if (project.wiring(name).isPresent()) {
            throw new BadCall("something is called " + name + " already; give the lead another name with --name");
        }
        AdaptorDraft.Side first = side(project, one);
        AdaptorDraft.Side second = side(project, other);
        if (first.drawing().name().equals(second.drawing().name())) {
            throw new BadCall("an adaptor joins two drawings, and both connectors are of " + first.drawing().name());
        }
        if (!first.drawing().platform().name().equals(second.drawing().platform().name())) {
            throw new BadCall(second.drawing().name() + " is of another platform than " + first.drawing().name());
        }
        AdaptorDraft draft = AdaptorDraft.of(name, project, first, second, cancel);
        return new Drafted(draft, reader.read(name + ".loom", Formatter.format(draft.text())
                .getBytes(StandardCharsets.UTF_8)));
    }

    private static AdaptorDraft.Side side(Project project, String text) throws BadCall {
        int colon = text.indexOf(':');
        if (colon <= 0 || colon == text.length() - 1) {
            throw new BadCall("--adaptor takes DRAWING:CONNECTOR,DRAWING:CONNECTOR, not \"" + text + "\"");
        }
        WiringView drawing = project.wiring(text.substring(0, colon))
                .orElseThrow(() -> new BadCall("the project has no drawing " + text.substring(0, colon)));
        String connector = text.substring(colon + 1);
        return new AdaptorDraft.Side(drawing, Optional.ofNullable(drawing.connectors().get(connector))
                .orElseThrow(() -> new BadCall(drawing.name() + " has no connector " + connector)));
    }
}
