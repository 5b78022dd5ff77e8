// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.contentassist.CompletionProposal;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.IContentAssistProcessor;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.contentassist.IContextInformationValidator;
import org.eclipse.swt.graphics.Image;
import org.loomwright.ide.Services;
import org.loomwright.ide.complete.Proposal;

/** Content assist: what fits at the cursor, and templates for whole constructs. Called off the thread that draws. */
public final class LoomCompletion implements IContentAssistProcessor {

    @Override
    public ICompletionProposal[] computeCompletionProposals(ITextViewer viewer, int offset) {
        List<ICompletionProposal> all = new ArrayList<>();
        Asking.of(viewer).ifPresent(open -> all.addAll(Asking.ask(open, (moment, file, cancel) -> {
            List<ICompletionProposal> fitting = new ArrayList<>();
            Services.complete(moment, file, offset, cancel).forEach(each -> fitting.add(proposal(each)));
            Services.templates(moment, file, offset).forEach(each -> fitting.add(LoomTemplates.proposal(each,
                    viewer.getDocument(), moment.lines(file))));
            return fitting;
        }, List.of())));
        return all.toArray(ICompletionProposal[]::new);
    }

    private static ICompletionProposal proposal(Proposal proposal) {
        String shown = proposal.text().strip() + (proposal.detail().isEmpty() ? "" : " - " + proposal.detail());
        return new CompletionProposal(proposal.text(), proposal.where().offset(), proposal.where().length(),
                proposal.text().length(), (Image) null, shown, null,
                proposal.more().isEmpty() ? proposal.detail() : proposal.more());
    }

    @Override
    public IContextInformation[] computeContextInformation(ITextViewer viewer, int offset) {
        return null;
    }

    @Override
    public char[] getCompletionProposalAutoActivationCharacters() {
        return null;
    }

    @Override
    public char[] getContextInformationAutoActivationCharacters() {
        return null;
    }

    @Override
    public String getErrorMessage() {
        return null;
    }

    @Override
    public IContextInformationValidator getContextInformationValidator() {
        return null;
    }
}
