// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.resources.IProject;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.hyperlink.AbstractHyperlinkDetector;
import org.eclipse.jface.text.hyperlink.IHyperlink;
import org.eclipse.ui.PlatformUI;
import org.loomwright.harness.Span;
import org.loomwright.ide.Services;
import org.loomwright.ide.navigate.Target;
import org.loomwright.stock.Stock;
import org.loomwright.workbench.view.Places;

/** Open declaration: the key of the platform for it, or a click with Ctrl held. */
public final class LoomLinks extends AbstractHyperlinkDetector {

    @Override
    public IHyperlink[] detectHyperlinks(ITextViewer viewer, IRegion region, boolean several) {
        Optional<Asking.Open> open = Asking.of(viewer);
        IHyperlink[] links = open.flatMap(each -> Asking.last(each, viewer.getDocument()))
                .map(moment -> Services.definition(moment, open.get().name(), region.getOffset()).stream()
                        .filter(target -> !target.name().file().startsWith(Stock.PREFIX))
                        .map(target -> link(open.get().file().getProject(), target))
                        .toArray(IHyperlink[]::new)).orElse(new IHyperlink[0]);
        return links.length == 0 ? null : several ? links : new IHyperlink[] {links[0]};
    }

    private static IHyperlink link(IProject project, Target target) {
        Span origin = target.origin();
        return new IHyperlink() {

            @Override
            public IRegion getHyperlinkRegion() {
                return new Region(origin.offset(), origin.length());
            }

            @Override
            public String getTypeLabel() {
                return "Declaration";
            }

            @Override
            public String getHyperlinkText() {
                return "Open " + target.symbol().words() + " (" + target.name().file() + ")";
            }

            @Override
            public void open() {
                Places.open(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage(), project,
                        target.name());
            }
        };
    }
}
