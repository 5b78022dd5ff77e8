// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.parser;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.EnumRule;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;

/** The words of the trade for what the grammar expects somewhere. */
public final class Expectation {
    /** That the line could be complete. */
    static final String LINE_END = "the end of the line";

    private static final String NAME = "a name";
    private static final String LENGTH = "a length such as 12 mm";

    /** What a reference is to, by its type. */
    private static final Map<String, String> TARGETS = Map.ofEntries(
            Map.entry("Zone", "the name of a zone"), Map.entry("Place", "the name of a place"),
            Map.entry("Part", "the name of a catalogue part"), Map.entry("GroundNode", "the name of a ground node"),
            Map.entry("Mode", "the name of a mode"), Map.entry("Platform", "the name of a platform"),
            Map.entry("Position", "the name of a position"), Map.entry("Drawing", "the name of a drawing"),
            Map.entry("Point", "the name of a breakout or place"), Map.entry("Breakout", "the name of a breakout"),
            Map.entry("Mateable", "the name of a connector"), Map.entry("Endable",
                    "the name of a connector, splice, stud or device"),
            Map.entry("Wiring", "the name of a drawing or harness"), Map.entry("Branch", "the name of a branch"),
            Map.entry("Run", "the name of a trunk or branch"), Map.entry("Item", "the name of a harness or part"),
            Map.entry("Named", "the name of a drawing, harness, kit or platform"),
            Map.entry("Kit", "the name of a kit"), Map.entry("Choice", "the name of a choice"));

    /** What a rule reads, where the feature says nothing more. */
    private static final Map<String, String> RULES = Map.ofEntries(
            Map.entry("Measure", LENGTH), Map.entry("Tolerance", "a tolerance such as \u00b1 10 mm"),
            Map.entry("Condition", "a condition such as year <= 1966 and not fan"),
            Map.entry("Conjunction", "a condition"), Map.entry("Negation", "a condition"),
            Map.entry("Colour", "a colour such as LG/BK"), Map.entry("End", "an end such as J1:7"),
            Map.entry("Location", "\"at\" with a breakout or \"on\" with a trunk or branch"),
            Map.entry("Date", "a date such as 2027-06-30"), Map.entry("Member", NAME),
            Map.entry("PinRange", "a pin or a row of pins such as 1 .. 12"), Map.entry("Quantity", LENGTH),
            Map.entry("Name", NAME), Map.entry("STRING", "text in quotes"), Map.entry("INT", "a number"),
            Map.entry("UnitName", "a unit"), Map.entry("Decimal", "a number"), Map.entry("Fraction", "a fraction"),
            Map.entry("Relation", "a comparison such as <="), Map.entry("ID", "a colour code"));

    /** What a feature is, by rule and feature, or by feature in any rule. */
    private static final Map<String, String> FEATURES = Map.ofEntries(
            Map.entry("voltage", "a voltage such as 12 V"), Map.entry("ambient", "a temperature such as 80 C"),
            Map.entry("resistance", "a resistance such as 5 mohm"), Map.entry("size", "a wire size such as 18 ga"),
            Map.entry("mass", "a mass such as 12 g"),
            Map.entry("through", "a resistance, a rating or a power such as 10 A"),
            Map.entry("FigureFact.from", "a figure with its unit"),
            Map.entry("FigureFact.upTo", "a figure with its unit"),
            Map.entry("Join.from", "a pin"), Map.entry("Join.to", "a pin"), Map.entry("states", "a state"),
            Map.entry("state", "a state"), Map.entry("subject", "the name of a device"),
            Map.entry("cavity", "a cavity"), Map.entry("CavityFact.mate", "a cavity of the mate"),
            Map.entry("rule", "the id of a rule"), Map.entry("element", "the name of an element"),
            Map.entry("Origin.number", "a circuit number"), Map.entry("title", "a title in quotes"),
            Map.entry("year", "a year"), Map.entry("first", "a year"), Map.entry("last", "a year"),
            Map.entry("value", "a word"), Map.entry("LimitSetting.value", LENGTH), Map.entry("Measure.value", LENGTH),
            Map.entry("samples", "a number of samples"), Map.entry("group", "a choice"),
            Map.entry("member", "a member of the group"), Map.entry("PinRange.upTo", "a pin"),
            Map.entry("Atom.from", "a member of the group"), Map.entry("Atom.to", "a member of the group"));

    private Expectation() {
    }

    /** Returns the words for one element. */
    static String words(AbstractElement element) {
        return switch (element) {
            case Keyword word when word.getValue().equals("{") -> LINE_END;
            case Keyword word -> "\"" + word.getValue() + "\"";
            case RuleCall call when call.getRule().getName().equals("EOL") -> LINE_END;
            case RuleCall call -> RULES.getOrDefault(call.getRule().getName(), NAME);
            case CrossReference reference -> TARGETS.getOrDefault(reference.getType().getClassifier().getName(), NAME);
            case Assignment assignment -> words(assignment);
            default -> NAME;
        };
    }

    private static String words(Assignment assignment) {
        AbstractElement terminal = assignment.getTerminal();
        if (terminal instanceof Keyword || terminal instanceof CrossReference) {
            return words(terminal);
        }
        AbstractRule owner = EcoreUtil2.getContainerOfType(assignment, AbstractRule.class);
        String feature = assignment.getFeature();
        String words = FEATURES.getOrDefault(owner.getName() + "." + feature, FEATURES.get(feature));
        if (words != null) {
            return words;
        }
        List<String> literals = keywords(assignment).toList();
        return literals.isEmpty() || literals.size() > 4 ? words(terminal)
                : either(literals.stream().map(word -> "\"" + word + "\"").toList());
    }

    /** Returns the keywords that an element may begin with, as far as they are written in it. */
    static Stream<String> keywords(AbstractElement element) {
        return switch (element) {
            case Keyword word -> Stream.of(word.getValue());
            case Assignment assignment -> keywords(assignment.getTerminal());
            case RuleCall call when call.getRule() instanceof EnumRule literals -> EcoreUtil2
                    .getAllContentsOfType(literals, EnumLiteralDeclaration.class).stream()
                    .map(literal -> literal.getLiteral().getValue());
            default -> Stream.empty();
        };
    }

    /** Returns the words for what a reference of a type names: {@code connector, splice, stud or device}. */
    public static String target(String type) {
        String words = TARGETS.getOrDefault(type, "the name of a thing");
        return words.substring(words.indexOf(' ', "the name of ".length()) + 1);
    }

    static boolean isName(String words) {
        return words.equals(NAME) || words.startsWith("the name of");
    }

    /** Joins words for people: {@code a, b or c}. */
    static String either(List<String> words) {
        int last = words.size() - 1;
        return last < 1 ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
    }
}
