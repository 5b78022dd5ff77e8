// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.List;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.templates.DocumentTemplateContext;
import org.eclipse.jface.text.templates.GlobalTemplateVariables;
import org.eclipse.jface.text.templates.Template;
import org.eclipse.jface.text.templates.TemplateContext;
import org.eclipse.jface.text.templates.TemplateContextType;
import org.eclipse.jface.text.templates.TemplateProposal;
import org.eclipse.jface.text.templates.TemplateVariable;
import org.eclipse.jface.text.templates.TemplateVariableResolver;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Span;
import org.loomwright.ide.complete.Templates;

/** Shows the templates of the language services as those of the platform, with a field at each gap. */
public final class LoomTemplates {

    private static final String CONTEXT = "org.loomwright.workbench.loom";
    private static final String FIELD = "field";

    private LoomTemplates() {
    }

    /** A template that fits a place, indented like the line that it stands in. */
    static ICompletionProposal proposal(Templates.Fitting fitting, IDocument document, LineIndex lines) {
        Span where = fitting.where();
        String line = lines.text().substring(lines.start(where.line()), where.offset());
        return new TemplateProposal(template(fitting.template(), line.isBlank() ? line : ""), context(document, where),
                new Region(where.offset(), where.length()), null);
    }

    /** Where a template is filled in. */
    public static TemplateContext context(IDocument document, Span where) {
        TemplateContextType type = new TemplateContextType(CONTEXT);
        type.addResolver(new GlobalTemplateVariables.Cursor());
        type.addResolver(new Field());
        return new DocumentTemplateContext(type, document, where.offset(), where.length());
    }

    /** A template in the platform's spelling. */
    public static Template template(Templates.Template template, String indent) {
        StringBuilder pattern = new StringBuilder();
        List<String> pieces = template.pieces();
        for (int i = 0; i < pieces.size(); i++) {
            String piece = pieces.get(i);
            if (i % 2 == 0) {
                pattern.append(piece.replace("$", "$$").replace("\n", "\n" + indent));
            } else if (piece.isEmpty()) {
                pattern.append("${cursor}");
            } else {
                pattern.append("${f").append(i).append(':').append(FIELD).append("('").append(piece.replace("'", "''"))
                        .append("')}");
            }
        }
        return new Template(template.word() + " ...", template.meaning(), CONTEXT, pattern.toString(), false);
    }

    /** A field that shows at first what its template says. */
    private static final class Field extends TemplateVariableResolver {

        Field() {
            super(FIELD, "what is to be filled in");
        }

        @Override
        public void resolve(TemplateVariable variable, TemplateContext context) {
            List<?> said = variable.getVariableType().getParams();
            variable.setValue(said.isEmpty() ? variable.getName() : said.getFirst().toString());
            variable.setUnambiguous(false);
            variable.setResolved(true);
        }
    }
}
