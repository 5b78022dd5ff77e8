// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.words;

import java.util.Set;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.EnumLiteralDeclaration;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;
import org.loomwright.lang.lines.GrammarSearch.Frame;
import org.loomwright.lang.words.Slot.Sort;

/** Tells from the grammar what a word is that an element of it reads. */
final class SlotOf {

    private static final String HEAD = "Head";
    /** Properties that give a name to what the line is, where they are not references. */
    private static final Set<String> NAMES = Set.of("name");
    private static final Set<String> COLOURS = Set.of("base", "tracer");

    private SlotOf() {
    }

    static Slot of(AbstractElement element, Frame frame, Assignment inner, Assignment outer) {
        boolean ofData = false;
        CrossReference reference = null;
        for (Frame each = frame; each != null && each.element() != inner; each = each.outer()) {
            ofData |= each.element() instanceof RuleCall call && GrammarUtil.isDatatypeRuleCall(call);
            reference = each.element() instanceof CrossReference found ? found : reference;
        }
        boolean literal = frame != null && frame.element() instanceof EnumLiteralDeclaration;
        String rule = inner == null ? "" : rule(inner);
        String feature = inner == null ? "" : inner.getFeature();
        String around = outer == null ? "" : rule(outer) + "." + outer.getFeature();
        if (element instanceof Keyword word && (literal || !ofData)) {
            boolean letters = Character.isLetter(word.getValue().charAt(0));
            return new Slot(letters ? Sort.KEYWORD : Sort.MARK, rule, feature, around, "", word.getValue());
        }
        if (reference != null) {
            return new Slot(Sort.REFERENCE, rule, feature, around, reference.getType().getClassifier().getName(), "");
        }
        Sort sort = sort(element, frame, rule, feature);
        return new Slot(sort, rule, feature, around, target(rule, feature), "");
    }

    /** The construct that holds a property; the head of a block is part of the block. */
    private static String rule(Assignment assignment) {
        String name = EcoreUtil2.getContainerOfType(assignment, AbstractRule.class).getName();
        return name.endsWith(HEAD) ? name.substring(0, name.length() - HEAD.length()) : name;
    }

    private static Sort sort(AbstractElement element, Frame frame, String rule, String feature) {
        String called = called(element, frame);
        return switch (called) {
            case "STRING" -> Sort.TEXT;
            case "UnitName" -> Sort.UNIT;
            case "Decimal", "Fraction", "INT", "Date" -> Sort.NUMBER;
            case "PinName" -> rule.equals("PinRange") && NAMES.contains(feature) ? Sort.NAME : Sort.PIN;
            case "ID" -> COLOURS.contains(feature) ? Sort.COLOUR : Sort.WORD;
            default -> NAMES.contains(feature) ? Sort.NAME : target(rule, feature).isEmpty() ? Sort.WORD
                    : Sort.REFERENCE;
        };
    }

    /** The outermost rule within the property that the word is read by. */
    private static String called(AbstractElement element, Frame frame) {
        String name = element instanceof RuleCall call ? call.getRule().getName() : "";
        for (Frame each = frame; each != null && !(each.element() instanceof Assignment); each = each.outer()) {
            name = each.element() instanceof RuleCall call ? call.getRule().getName() : name;
        }
        return name;
    }

    /** What a name stands for that the grammar itself leaves open. */
    private static String target(String rule, String feature) {
        return switch (rule + "." + feature) {
            case "Atom.group" -> "Axis";
            case "Atom.member", "Atom.from", "Atom.to" -> "Member";
            case "ModeSetting.subject" -> "Device";
            case "Waiver.rule", "Treatment.rule" -> "Rule";
            case "Waiver.element" -> "WaivedElement";
            case "OwnLimit.limit" -> "Limit";
            case "Origin.number" -> "OriginCircuit";
            default -> "";
        };
    }
}
