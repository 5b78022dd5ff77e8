// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.IdentityHashMap;
import java.util.Map;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.loomwright.lang.services.LoomGrammarAccess;

/** Which feature a grammar element fills; read off the grammar once and only read afterwards. */
final class Features {
    private final Map<EObject, String> features = new IdentityHashMap<>();
    private final Map<EObject, Boolean> opening = new IdentityHashMap<>();

    Features(LoomGrammarAccess access) {
        for (Assignment assignment : EcoreUtil2.getAllContentsOfType(access.getGrammar(), Assignment.class)) {
            AbstractElement terminal = assignment.getTerminal();
            features.put(terminal, assignment.getFeature());
            EcoreUtil2.getAllContentsOfType(terminal, AbstractElement.class)
                    .forEach(part -> features.put(part, assignment.getFeature()));
        }
        GrammarUtil.allParserRules(access.getGrammar()).stream()
                .flatMap(rule -> GrammarUtil.containedKeywords(rule).stream())
                .filter(word -> word.getValue().equals("{"))
                .forEach((Keyword word) -> opening.put(word, true));
    }

    /** Returns the feature that an element fills, or null. */
    String of(EObject element) {
        return features.get(element);
    }

    /** Returns whether an element is the brace behind a head. */
    boolean opensBlock(EObject element) {
        return opening.containsKey(element);
    }
}
