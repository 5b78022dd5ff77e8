// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import org.eclipse.jface.text.source.DefaultCharacterPairMatcher;

/** Shows the other brace or bracket of a pair. */
public final class LoomBrackets extends DefaultCharacterPairMatcher {

    public LoomBrackets() {
        super(new char[] {'{', '}', '(', ')'});
    }
}
