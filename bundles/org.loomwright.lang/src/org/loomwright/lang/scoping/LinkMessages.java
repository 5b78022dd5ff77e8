// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.scoping;

import org.eclipse.xtext.diagnostics.DiagnosticMessage;
import org.eclipse.xtext.diagnostics.Severity;
import org.eclipse.xtext.linking.impl.IllegalNodeException;
import org.eclipse.xtext.linking.impl.LinkingDiagnosticMessageProvider;
import org.loomwright.lang.parser.Expectation;

/** Says in words of the trade that a name is unknown. */
public class LinkMessages extends LinkingDiagnosticMessageProvider {
    /** The code of names that nothing has, the same as on the snapshot. */
    public static final String CODE = "name-unknown";

    @Override
    public DiagnosticMessage getUnresolvedProxyMessage(ILinkingDiagnosticContext context) {
        String text;
        try {
            text = context.getLinkText();
        } catch (IllegalNodeException e) {
            text = e.getNode().getText().strip();
        }
        String sort = Expectation.target(context.getReference().getEReferenceType().getName());
        return new DiagnosticMessage("there is no " + sort + " named \"" + text + "\"", Severity.ERROR, CODE);
    }
}
