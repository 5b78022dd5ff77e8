// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextHover;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.loomwright.ide.Services;
import org.loomwright.ide.hover.Hover;
import org.loomwright.rules.Finding;
import org.loomwright.workbench.preference.Preferences;

/** Hover: what is known about a word, and what was found at it. Called off the thread that draws. */
public final class LoomHover implements ITextHover {

    @Override
    public String getHoverInfo(ITextViewer viewer, IRegion region) {
        int offset = region.getOffset();
        return Asking.of(viewer).map(open -> Asking.ask(open, (moment, file, cancel) -> {
            StringBuilder words = new StringBuilder();
            moment.findings(file).stream().filter(Finding::counts)
                    .filter(each -> each.place().span().offset() <= offset && offset <= each.place().span().end())
                    .forEach(each -> words.append(each.severity().words()).append(": ").append(each.sentence())
                            .append(each.advice().isEmpty() ? "" : "\ntry: " + each.advice()).append("\n\n"));
            Services.hover(moment, file, offset, Preferences.shown(), cancel).map(Hover::text).ifPresent(words::append);
            return words.toString().strip();
        }, "")).filter(words -> !words.isEmpty()).orElse(null);
    }

    @Override
    public IRegion getHoverRegion(ITextViewer viewer, int offset) {
        Optional<Asking.Open> open = Asking.of(viewer);
        return open.flatMap(each -> Asking.last(each, viewer.getDocument()))
                .map(moment -> Services.highlights(moment, open.get().name(), offset)).orElse(List.of()).stream()
                .map(each -> each.span()).filter(span -> span.offset() <= offset && offset <= span.end())
                .<IRegion>map(span -> new Region(span.offset(), span.length())).findFirst()
                .orElse(new Region(offset, 0));
    }
}
