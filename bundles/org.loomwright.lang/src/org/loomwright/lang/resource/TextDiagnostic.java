// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.resource;

import org.eclipse.xtext.diagnostics.Diagnostic;
import org.loomwright.harness.Problem;

/** A problem of the text as an error of its resource. */
record TextDiagnostic(Problem problem) implements Diagnostic {

    @Override
    public String getMessage() {
        return problem.message();
    }

    @Override
    public String getLocation() {
        return problem.span().at();
    }

    @Override
    public int getLine() {
        return problem.span().line();
    }

    @Override
    public int getColumn() {
        return problem.span().column();
    }

    @Override
    public int getOffset() {
        return problem.span().offset();
    }

    @Override
    public int getLength() {
        return problem.span().length();
    }

    /** Problems lie on one line. */
    @Override
    public int getLineEnd() {
        return problem.span().line();
    }

    @Override
    public int getColumnEnd() {
        return problem.span().column() + problem.span().length();
    }
}
