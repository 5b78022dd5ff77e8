// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.parser.IParseResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.loomwright.lang.parser.LineParser;
import org.loomwright.lang.services.LoomGrammarAccess;

/** The corpus is what the other tests stand on: free of problems, and complete. */
class CorpusTest {
    static final List<String> FILES = Corpus.FILES;

    /** What valid text never holds. */
    private static final Set<String> FOR_DAMAGED_TEXT = Set.of("Unreadable");

    @ParameterizedTest
    @FieldSource("FILES")
    void hasNoProblems(String file) {
        assertEquals(List.of(), Corpus.problems(Corpus.text(file)));
    }

    @ParameterizedTest
    @FieldSource("FILES")
    void isReadByXtextToo(String file) {
        IParseResult result = Corpus.injector().getInstance(LineParser.class)
                .parse(new StringReader(Corpus.text(file)));
        assertTrue(!result.hasSyntaxErrors());
        assertEquals(Corpus.text(file), result.getRootNode().getText());
    }

    @Test
    void usesEveryConstruct() {
        Set<EObject> used = Collections.newSetFromMap(new IdentityHashMap<>());
        LineParser parser = Corpus.injector().getInstance(LineParser.class);
        List<String> texts = Stream.concat(FILES.stream().map(Corpus::text),
                Stream.of(Corpus.resource("mistakes.loom"))).toList();
        for (String text : texts) {
            for (INode node : parser.parse(new StringReader(text)).getRootNode().getAsTreeIterable()) {
                used.add(node.getGrammarElement());
            }
        }
        LoomGrammarAccess access = Corpus.injector().getInstance(LoomGrammarAccess.class);
        List<String> unused = new ArrayList<>();
        for (ParserRule rule : GrammarUtil.allParserRules(access.getGrammar())) {
            if (rule.getName().equals("SoftWord") || FOR_DAMAGED_TEXT.contains(rule.getName())) {
                continue;
            }
            for (AbstractElement element : EcoreUtil2.getAllContentsOfType(rule, AbstractElement.class)) {
                boolean leaf = element instanceof Keyword || element instanceof RuleCall call && isTerminal(call);
                if (leaf && !used.contains(element)) {
                    unused.add(rule.getName() + ": " + text(element));
                }
            }
        }
        GrammarUtil.allEnumRules(access.getGrammar()).forEach(rule -> EcoreUtil2
                .getAllContentsOfType(rule, Keyword.class).stream()
                .filter(word -> !used.contains(word) && !used.contains(word.eContainer()))
                .forEach(word -> unused.add(rule.getName() + ": " + text(word))));
        assertEquals(List.of(), unused);
    }

    private static boolean isTerminal(RuleCall call) {
        AbstractRule rule = call.getRule();
        return GrammarUtil.isTerminalRuleCall(call) && !rule.getName().equals("BAD_LINE");
    }

    private static String text(AbstractElement element) {
        return element instanceof Keyword word ? word.getValue() : ((RuleCall) element).getRule().getName() + " in "
                + GrammarUtil.containingParserRule(element).getName();
    }
}
