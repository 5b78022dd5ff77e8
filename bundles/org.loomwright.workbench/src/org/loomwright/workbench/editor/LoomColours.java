// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

import java.util.Set;
import org.eclipse.jface.resource.ColorRegistry;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.text.TextAttribute;
import org.eclipse.jface.text.presentation.PresentationReconciler;
import org.eclipse.jface.text.rules.DefaultDamagerRepairer;
import org.eclipse.jface.text.rules.IRule;
import org.eclipse.jface.text.rules.IToken;
import org.eclipse.jface.text.rules.IWordDetector;
import org.eclipse.jface.text.rules.EndOfLineRule;
import org.eclipse.jface.text.rules.RuleBasedScanner;
import org.eclipse.jface.text.rules.SingleLineRule;
import org.eclipse.jface.text.rules.Token;
import org.eclipse.jface.text.rules.WordRule;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.RGB;

/** Colours of the text by its words alone; what words mean is coloured on top. Keywords are bold in every theme. */
public final class LoomColours extends PresentationReconciler {

    private static final Set<String> BLOCKS = Set.of("platform", "catalogue", "drawing", "harness", "kit", "practice",
            "waive");
    private static final Set<String> WORDS = Set.of("after", "and", "as", "at", "barrier", "because", "bend", "branch",
            "branches", "break", "breakout", "breakouts", "by", "cable", "cap", "cavities", "circuit", "clip",
            "colour", "connector", "contains", "covering", "covers", "datum", "device", "fills", "fit", "for", "from",
            "fuse", "grommet", "ground", "group", "housing", "in", "is", "issue", "joins", "lamp", "legend", "limit",
            "load", "made", "map", "mates", "minimise", "mode", "motor", "never", "none", "not", "of", "on", "opening",
            "option", "or", "path", "pinned", "pins", "place", "plug", "position", "protects", "quantity", "relay",
            "require", "revision", "sample", "seal", "sheet", "size", "slack", "sold", "splice", "strap", "stud",
            "supply", "switch", "takes", "terminal", "through", "to", "tolerance", "treat", "trunk", "unknown",
            "until", "upgrade", "when", "wire", "within", "years", "zone");

    public LoomColours() {
        RuleBasedScanner scanner = new RuleBasedScanner();
        scanner.setRules(new IRule[] {
            new EndOfLineRule("//", token("comment", new RGB(63, 127, 95), SWT.ITALIC)),
            new SingleLineRule("\"", "\"", token("text", new RGB(42, 90, 170), SWT.NORMAL), '\\'),
            words()});
        DefaultDamagerRepairer repairer = new DefaultDamagerRepairer(scanner);
        setDamager(repairer, IDocument.DEFAULT_CONTENT_TYPE);
        setRepairer(repairer, IDocument.DEFAULT_CONTENT_TYPE);
    }

    private static IRule words() {
        WordRule rule = new WordRule(new IWordDetector() {

            @Override
            public boolean isWordStart(char c) {
                return Character.isLetter(c);
            }

            @Override
            public boolean isWordPart(char c) {
                return Character.isLetterOrDigit(c) || c == '_';
            }
        }, Token.UNDEFINED);
        IToken block = token("block", new RGB(127, 0, 85), SWT.BOLD);
        IToken word = token("keyword", new RGB(127, 0, 85), SWT.BOLD);
        BLOCKS.forEach(each -> rule.addWord(each, block));
        WORDS.forEach(each -> rule.addWord(each, word));
        return rule;
    }

    /** The colour of a theme, when it has one of that name; else ours. */
    private static IToken token(String name, RGB ours, int style) {
        ColorRegistry colours = JFaceResources.getColorRegistry();
        String key = "org.loomwright.workbench.colour." + name;
        if (!colours.hasValueFor(key)) {
            colours.put(key, ours);
        }
        return new Token(new TextAttribute(colours.get(key), null, style));
    }
}
