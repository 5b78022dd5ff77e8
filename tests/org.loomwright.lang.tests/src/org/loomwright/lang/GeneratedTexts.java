// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import com.google.inject.Injector;
import java.util.List;
import java.util.Random;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Action;
import org.eclipse.xtext.Alternatives;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.EnumRule;
import org.eclipse.xtext.Group;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.loomwright.lang.services.LoomGrammarAccess;

/** Writes texts at random, from the grammar itself, so that every construct comes up. Equal seeds give equal texts. */
final class GeneratedTexts {
    private static final List<String> NAMES = List.of("a", "J1", "leftWing", "12", "12b", "size", "wet", "low-beam",
            "_x");
    private static final List<String> UNITS = List.of("mm", "in", "ga", "mm2", "A", "V", "mohm", "C", "%");
    private static final int DEEP = 14;

    private final AbstractRule file;
    private final Random random;
    private final boolean untidy;
    private final StringBuilder text = new StringBuilder();
    private int comments;
    private boolean lineStart = true;

    /** With untidy white space and comments in the gaps, or with single spaces. */
    GeneratedTexts(long seed, boolean untidy) {
        Injector injector = Corpus.injector();
        file = injector.getInstance(LoomGrammarAccess.class).getLoomFileRule();
        random = new Random(seed);
        this.untidy = untidy;
    }

    /** Returns the next text; its comments are numbered c1, c2 and so on. */
    String next() {
        text.setLength(0);
        comments = 0;
        lineStart = true;
        for (int i = 0; i < 3; i++) {
            one(file.getAlternatives(), 0);
        }
        return text.toString();
    }

    int comments() {
        return comments;
    }

    private void element(AbstractElement element, int depth) {
        String cardinality = element.getCardinality() == null ? "" : element.getCardinality();
        int times = switch (cardinality) {
            case "?" -> random.nextInt(2);
            case "*" -> random.nextInt(depth > 3 ? 3 : 6);
            case "+" -> 1 + random.nextInt(2);
            default -> 1;
        };
        for (int i = 0; i < times; i++) {
            one(element, depth);
        }
    }

    private void one(AbstractElement element, int depth) {
        switch (element) {
            case Group group -> group.getElements().forEach(part -> element(part, depth + 1));
            case Alternatives either -> {
                List<AbstractElement> parts = either.getElements();
                element(parts.get(depth > DEEP ? parts.size() - 1 : random.nextInt(parts.size())), depth + 1);
            }
            case Assignment assignment -> element(assignment.getTerminal(), depth);
            case CrossReference reference -> element(reference.getTerminal(), depth);
            case Action action -> { }
            case Keyword word -> word(word.getValue());
            case RuleCall call -> call(call.getRule(), depth);
            default -> throw new AssertionError(element);
        }
    }

    private void call(AbstractRule rule, int depth) {
        switch (rule.getName()) {
            case "EOL" -> word("\n");
            case "Unreadable", "BAD_LINE" -> { }
            case "Name" -> word(pick(NAMES));
            case "UnitName" -> word(pick(UNITS));
            case "INT" -> word(String.valueOf(random.nextInt(3000)));
            case "CODE" -> word(random.nextInt(90) + "b");
            case "ID" -> word(pick(List.of("LG", "BK", "leftWing")));
            case "STRING" -> word(pick(List.of("\"\"", "\"words, 12 {\"", "\"a \\\"b\\\" // c\"",
                    "\"\u00b1 \u00e9\"")));
            case "Decimal" -> word(pick(List.of("12", "0", "12.5", "-3", "18")));
            default -> {
                if (rule instanceof EnumRule literals) {
                    List<EObject> all = List.copyOf(EcoreUtil2.getAllContentsOfType(literals,
                            EnumLiteralDeclaration.class));
                    word(((EnumLiteralDeclaration) pick(all)).getLiteral().getValue());
                } else {
                    element(rule.getAlternatives(), depth + 1);
                }
            }
        }
    }

    private <T> T pick(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }

    private void word(String word) {
        boolean breaks = word.equals("\n") || word.equals("{") || word.equals("}");
        if (!lineStart || untidy) {
            text.append(gap(lineStart));
        }
        text.append(word.equals("\n") ? "" : word);
        lineStart = breaks;
        if (breaks) {
            text.append(untidy && random.nextInt(4) == 0 ? " // c" + ++comments + "  " : "");
            text.append("\n".repeat(1 + (untidy ? random.nextInt(3) : 0)));
        }
    }

    private String gap(boolean atStart) {
        if (!untidy) {
            return " ";
        }
        String blanks = pick(List.of(" ", "  ", "\t", " \t "));
        return switch (random.nextInt(9)) {
            case 0 -> blanks + "/* c" + ++comments + " */" + blanks;
            case 1 -> atStart ? "// c" + ++comments + "\n" + blanks : "/* c" + ++comments + "\n  and more  \n*/";
            default -> blanks;
        };
    }
}
