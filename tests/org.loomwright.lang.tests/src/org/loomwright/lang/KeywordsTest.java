// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Set;
import java.util.TreeSet;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.IGrammarAccess;
import org.junit.jupiter.api.Test;

class KeywordsTest {

    @Test
    void theyAreThoseOfTheGrammar() {
        Grammar grammar = Corpus.injector().getInstance(IGrammarAccess.class).getGrammar();
        Set<String> words = new TreeSet<>(GrammarUtil.getAllKeywords(grammar));
        words.removeIf(word -> !Character.isLetter(word.charAt(0)));
        Set<String> ours = new TreeSet<>(Keywords.WORDS);
        ours.addAll(Keywords.BLOCKS);
        assertEquals(words, ours);
        assertEquals(words.size(), Keywords.WORDS.size() + Keywords.BLOCKS.size(), "each word stands once");
    }
}
