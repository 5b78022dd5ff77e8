// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.editor;

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
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Listener;
import org.loomwright.lang.Keywords;
import org.loomwright.workbench.text.Inks;

/** Colours of the text by its words alone; what words mean is coloured on top. Keywords are bold in every theme. */
public final class LoomColours extends PresentationReconciler {

    private boolean dark = Inks.dark();

    public LoomColours() {
        RuleBasedScanner scanner = new RuleBasedScanner();
        scanner.setRules(new IRule[] {
            new EndOfLineRule("//", token("comment", Inks.COMMENT, SWT.ITALIC)),
            new SingleLineRule("\"", "\"", token("text", Inks.TEXT, SWT.NORMAL), '\\'),
            words()});
        DefaultDamagerRepairer repairer = new DefaultDamagerRepairer(scanner);
        setDamager(repairer, IDocument.DEFAULT_CONTENT_TYPE);
        setRepairer(repairer, IDocument.DEFAULT_CONTENT_TYPE);
    }

    private IRule words() {
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
        IToken block = token("block", Inks.KEYWORD, SWT.BOLD);
        IToken word = token("keyword", Inks.KEYWORD, SWT.BOLD);
        Keywords.BLOCKS.forEach(each -> rule.addWord(each, block));
        Keywords.WORDS.forEach(each -> rule.addWord(each, word));
        return rule;
    }

    @Override
    public void install(ITextViewer viewer) {
        super.install(viewer);
        Display display = viewer.getTextWidget().getDisplay();
        Listener another = event -> display.asyncExec(() -> {
            if (viewer.getTextWidget() != null && !viewer.getTextWidget().isDisposed() && dark != Inks.dark()) {
                dark = !dark;
                viewer.invalidateTextPresentation();
            }
        });
        display.addListener(SWT.Settings, another);
        viewer.getTextWidget().addDisposeListener(event -> display.removeListener(SWT.Settings, another));
    }

    /** The colour of a theme, when it has one of that name; else ours for a ground as light or dark as it is. */
    private IToken token(String name, Inks ink, int style) {
        ColorRegistry colours = JFaceResources.getColorRegistry();
        String key = "org.loomwright.workbench.colour." + name;
        if (colours.hasValueFor(key)) {
            return new Token(new TextAttribute(colours.get(key), null, style));
        }
        TextAttribute onLight = new TextAttribute(new Color(ink.on(false)), null, style);
        TextAttribute onDark = new TextAttribute(new Color(ink.on(true)), null, style);
        return new Token(name) {

            @Override
            public Object getData() {
                return dark ? onDark : onLight;
            }
        };
    }
}
