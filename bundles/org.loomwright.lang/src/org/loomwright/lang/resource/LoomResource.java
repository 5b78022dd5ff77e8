// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.resource;

import org.eclipse.xtext.linking.lazy.LazyLinkingResource;
import org.loomwright.lang.parser.LineParseResult;

/** A source in an editor. What is wrong with its lines is among its errors, worded as everywhere else. */
public class LoomResource extends LazyLinkingResource {

    @Override
    protected void addSyntaxErrors() {
        if (getParseResult() instanceof LineParseResult result) {
            result.problems().forEach(problem -> getErrors().add(new TextDiagnostic(problem)));
        } else {
            super.addSyntaxErrors();
        }
    }
}
