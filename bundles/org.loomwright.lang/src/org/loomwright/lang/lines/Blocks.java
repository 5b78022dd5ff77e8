// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.lines;

import com.google.inject.Inject;
import com.google.inject.Singleton;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.util.EcoreUtil;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.EnumRule;
import org.eclipse.xtext.Grammar;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.ParserRule;
import org.eclipse.xtext.RuleCall;
import org.eclipse.xtext.parser.antlr.ITokenDefProvider;
import org.loomwright.lang.lines.Block.Starter;
import org.loomwright.lang.services.LoomGrammarAccess;

/**
 * The blocks of the language, read off the grammar once: a rule that ends in an EOL token is a line, a rule with braces
 * opens a block. Immutable after construction; may be shared by threads.
 */
@Singleton
public final class Blocks {
    private static final String END_OF_LINE = "EOL";

    private final Map<String, Integer> types = new HashMap<>();
    private final BitSet keywordTypes = new BitSet();
    private final Map<String, Block> blocks = new LinkedHashMap<>();
    private final Map<String, ParserRule> rules = new HashMap<>();
    private final Set<String> lineRules = new LinkedHashSet<>();
    private final TokenTypes tokenTypes = TokenTypes.ofLexer();
    private final Block file;

    @Inject
    public Blocks(LoomGrammarAccess access, ITokenDefProvider tokenNames) {
        tokenNames.getTokenDefMap().forEach((type, name) -> {
            boolean keyword = name.startsWith("'");
            types.put(keyword ? name.substring(1, name.length() - 1) : name, type);
            keywordTypes.set(type, keyword);
        });
        Grammar grammar = access.getGrammar();
        EcoreUtil.resolveAll(grammar);
        GrammarUtil.allParserRules(grammar).forEach(rule -> rules.put(rule.getName(), rule));
        boolean grown = true;
        while (grown) {
            grown = false;
            for (ParserRule rule : rules.values()) {
                grown |= !lineRules.contains(rule.getName()) && reachesLineEnd(rule) && lineRules.add(rule.getName());
            }
        }
        file = block(access.getLoomFileRule(), "a file");
    }

    private boolean reachesLineEnd(ParserRule rule) {
        return GrammarUtil.containedRuleCalls(rule).stream().map(call -> call.getRule().getName())
                .anyMatch(name -> name.equals(END_OF_LINE) || lineRules.contains(name));
    }

    private Block block(ParserRule facts, String title) {
        Block known = blocks.get(facts.getName());
        if (known != null) {
            return known;
        }
        Map<Integer, Starter> starters = new LinkedHashMap<>();
        blocks.put(facts.getName(), new Block(facts.getName(), title, Collections.unmodifiableMap(starters)));
        for (RuleCall call : GrammarUtil.containedRuleCalls(facts)) {
            if (call.getRule() instanceof ParserRule line && lineRules.contains(line.getName())) {
                Optional<ParserRule> opened = opened(line);
                opened.ifPresent(inner -> block(inner, named(line, inner)));
                Set<String> first = new LinkedHashSet<>();
                first(line.getAlternatives(), first);
                first.forEach(word -> starters.putIfAbsent(type(word),
                        new Starter(word, line.getName(), opened.map(ParserRule::getName))));
            }
        }
        return blocks.get(facts.getName());
    }

    /** Trunks and branches share their lines and so the block. */
    private static String named(ParserRule line, ParserRule inner) {
        String name = inner.getName().equals("RunFact") ? "trunk or branch" : line.getName().toLowerCase(Locale.ROOT);
        return ("aeiou".indexOf(name.charAt(0)) >= 0 ? "an " : "a ") + name;
    }

    /** The rule of the lines within the braces of a rule. */
    private static Optional<ParserRule> opened(ParserRule rule) {
        boolean braces = GrammarUtil.containedKeywords(rule).stream().anyMatch(word -> word.getValue().equals("{"));
        return GrammarUtil.containedAssignments(rule).stream()
                .filter(assignment -> braces && assignment.getFeature().equals("facts"))
                .map(assignment -> (ParserRule) ((RuleCall) assignment.getTerminal()).getRule())
                .findFirst();
    }

    /** Adds the keywords that an element may start with; returns whether it may also be empty. */
    private static boolean first(AbstractElement element, Set<String> into) {
        boolean empty = switch (element) {
            case Keyword keyword -> {
                into.add(keyword.getValue());
                yield false;
            }
            case Group group -> firstOfGroup(group, into);
            case Alternatives either -> {
                boolean any = false;
                for (AbstractElement one : either.getElements()) {
                    any |= first(one, into);
                }
                yield any;
            }
            case Assignment assignment -> first(assignment.getTerminal(), into);
            case Action action -> true;
            case RuleCall call -> firstOfRule(call.getRule(), into);
            default -> false;
        };
        return empty || GrammarUtil.isOptionalCardinality(element);
    }

    private static boolean firstOfGroup(Group group, Set<String> into) {
        for (AbstractElement part : group.getElements()) {
            if (!first(part, into)) {
                return false;
            }
        }
        return true;
    }

    private static boolean firstOfRule(AbstractRule rule, Set<String> into) {
        if (rule instanceof EnumRule literals) {
            for (EObject each : (Iterable<EObject>) literals::eAllContents) {
                if (each instanceof EnumLiteralDeclaration literal) {
                    into.add(literal.getLiteral().getValue());
                }
            }
            return false;
        }
        return rule instanceof ParserRule && first(rule.getAlternatives(), into);
    }

    /** The token types that structure a text. */
    public TokenTypes tokenTypes() {
        return tokenTypes;
    }

    /** The block that a file is. */
    public Block file() {
        return file;
    }

    /** The block whose lines are of a rule. */
    public Block block(String rule) {
        return blocks.get(rule);
    }

    /** Every sort of block in the order of the grammar, the file first. */
    public Stream<Block> inOrder() {
        return blocks.values().stream();
    }

    /** Returns whether a rule reads at least to the end of a line. */
    public boolean reachesLineEnd(String rule) {
        return lineRules.contains(rule);
    }

    public ParserRule rule(String name) {
        return rules.get(name);
    }

    /** Returns the token type of a keyword. */
    public int type(String keyword) {
        return types.get(keyword);
    }

    /** Returns the token type of a terminal rule. */
    public int terminal(String rule) {
        return types.get("RULE_" + rule);
    }

    /** Returns whether a token type is that of a keyword. */
    public boolean isKeyword(int type) {
        return keywordTypes.get(type);
    }
}
