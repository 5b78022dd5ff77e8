// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.clause;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CompoundElement;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.IGrammarAccess;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.junit.jupiter.api.Test;
import org.loomwright.lang.Corpus;
import org.loomwright.lang.lines.Block;
import org.loomwright.lang.lines.Blocks;

/** The words by which a merge takes lines apart, held against the grammar: a new fact must not be forgotten there. */
class VocabularyAgainstGrammarTest {

    private final Grammar grammar = Corpus.injector().getInstance(IGrammarAccess.class).getGrammar();
    private final Blocks blocks = Corpus.injector().getInstance(Blocks.class);

    /** What stands behind the first word of a line. */
    private enum Behind {
        OWN_NAME, NAME_WITH_COLON, OTHER_NAME, NO_NAME
    }

    @Test
    void everyWordIsAKeyword() {
        Set<String> keywords = GrammarUtil.getAllKeywords(grammar);
        List<String> unknown = Stream.of(Vocabulary.STARTERS, Vocabulary.FACTS, Vocabulary.MANY, Vocabulary.BY_FIRST,
                Vocabulary.NAMED_BY_COLON, Vocabulary.EITHER, Vocabulary.LISTS, Vocabulary.MEASURED.keySet())
                .flatMap(Set::stream).filter(word -> !keywords.contains(word)).sorted().toList();
        assertEquals(List.of(), unknown);
    }

    @Test
    void aLineThatHasNoNameIsAFact() {
        assertEquals(List.of(), words(Behind.NO_NAME).filter(word -> !Vocabulary.FACTS.contains(word)).toList());
    }

    @Test
    void aLineThatDeclaresAnElementIsNone() {
        Set<String> facts = new TreeSet<>();
        words(Behind.NO_NAME).forEach(facts::add);
        words(Behind.OTHER_NAME).forEach(facts::add);
        List<String> both = words(Behind.OWN_NAME).filter(Vocabulary.FACTS::contains).toList();
        assertEquals(Set.copyOf(both), Vocabulary.EITHER);
        assertTrue(facts.containsAll(Vocabulary.EITHER), facts.toString());
    }

    @Test
    void aNameBeforeAColonIsKnownByTheColon() {
        assertEquals(words(Behind.NAME_WITH_COLON).collect(Collectors.toSet()), Vocabulary.NAMED_BY_COLON);
    }

    /** Words that begin a line with that behind them in some block. */
    private Stream<String> words(Behind behind) {
        return blocks.inOrder().flatMap(block -> block.words().stream()
                .filter(word -> behind(block, word) == behind)).distinct().sorted();
    }

    private Behind behind(Block block, String word) {
        AbstractRule rule = GrammarUtil.findRuleForName(grammar, block.starter(blocks.type(word)).rule());
        List<AbstractElement> flat = new ArrayList<>();
        flatten(rule.getAlternatives(), flat);
        AbstractElement second = flat.get(1);
        if (second instanceof Assignment assignment) {
            if (assignment.getFeature().equals("name")) {
                boolean colon = flat.size() > 2 && flat.get(2) instanceof Keyword keyword
                        && keyword.getValue().equals(":");
                return colon ? Behind.NAME_WITH_COLON : Behind.OWN_NAME;
            }
            AbstractElement value = assignment.getTerminal();
            boolean name = value instanceof CrossReference
                    || value instanceof RuleCall call && call.getRule().getName().endsWith("Name");
            return name ? Behind.OTHER_NAME : Behind.NO_NAME;
        }
        return Behind.NO_NAME;
    }

    /** The first words of a rule, fragments opened, of alternatives the first. */
    private static void flatten(AbstractElement element, List<AbstractElement> flat) {
        switch (element) {
            case Alternatives alternatives -> flatten(alternatives.getElements().getFirst(), flat);
            case CompoundElement compound -> compound.getElements().forEach(each -> flatten(each, flat));
            case RuleCall call when call.getRule() instanceof ParserRule rule && !GrammarUtil.isDatatypeRule(rule) ->
                flatten(rule.getAlternatives(), flat);
            default -> flat.add(element);
        }
    }
}
