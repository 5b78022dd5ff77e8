// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.codemining.ICodeMining;
import org.eclipse.jface.text.codemining.ICodeMiningProvider;
import org.eclipse.jface.text.codemining.LineContentCodeMining;
import org.loomwright.ide.Services;
import org.loomwright.ide.inlay.Inlay;
import org.loomwright.workbench.preference.Preferences;

/** Figures in the text: the cut length at a wire, the number of vehicles at a condition. */
public final class LoomMinings implements ICodeMiningProvider {

    @Override
    public CompletableFuture<List<? extends ICodeMining>> provideCodeMinings(ITextViewer viewer,
            IProgressMonitor monitor) {
        Optional<Asking.Open> open = Asking.of(viewer);
        if (open.isEmpty()) {
            return CompletableFuture.completedFuture(List.of());
        }
        int length = viewer.getDocument().getLength();
        return CompletableFuture.supplyAsync(() -> {
            List<ICodeMining> minings = new ArrayList<>();
            Asking.ask(open.get(), (moment, file, cancel) -> moment.text(file).length() == length
                    ? Services.inlays(moment, file, 0, length, Preferences.unit(), cancel) : List.<Inlay>of(),
                    List.<Inlay>of())
                    .forEach(inlay -> minings.add(mining(inlay)));
            return minings;
        });
    }

    private ICodeMining mining(Inlay inlay) {
        LineContentCodeMining mining = new LineContentCodeMining(new Position(inlay.offset(), 1), this) {
        };
        mining.setLabel("  " + inlay.text());
        return mining;
    }

    @Override
    public void dispose() {
        // nothing is kept
    }
}
