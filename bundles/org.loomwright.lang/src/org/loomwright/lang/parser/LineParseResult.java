// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import java.util.List;
import org.eclipse.xtext.parser.IParseResult;
import org.eclipse.xtext.parser.ParseResult;
import org.loomwright.harness.Problem;

/** A tree together with what is wrong with the lines of its text. */
public final class LineParseResult extends ParseResult {
    private final List<Problem> problems;

    LineParseResult(IParseResult tree, List<Problem> problems) {
        super(tree.getRootASTElement(), tree.getRootNode(), tree.hasSyntaxErrors() || !problems.isEmpty());
        this.problems = problems;
    }

    /** Returns the problems by place. */
    public List<Problem> problems() {
        return problems;
    }
}
