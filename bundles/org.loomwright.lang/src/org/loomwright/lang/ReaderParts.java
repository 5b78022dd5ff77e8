// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.text.SimpleDateFormat;
import java.util.Locale;
import org.eclipse.emf.ecore.EPackage;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.XtextPackage;
import org.eclipse.xtext.conversion.IValueConverter;
import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.parser.DefaultEcoreElementFactory;
import org.eclipse.xtext.parser.antlr.AntlrTokenDefProvider;
import org.eclipse.xtext.parser.antlr.AntlrTokenToStringConverter;
import org.eclipse.xtext.parser.antlr.SyntaxErrorMessageProvider;
import org.eclipse.xtext.resource.XtextResourceSet;
import org.eclipse.xtext.resource.impl.BinaryGrammarResourceFactoryImpl;
import org.eclipse.xtext.service.GrammarProvider;
import org.loomwright.lang.lines.Blocks;
import org.loomwright.lang.parser.LineParser;
import org.loomwright.lang.parser.antlr.LoomAntlrTokenFileProvider;
import org.loomwright.lang.parser.antlr.internal.InternalLoomLexer;
import org.loomwright.lang.parser.antlr.internal.InternalLoomParser;
import org.loomwright.lang.services.LoomGrammarAccess;
import org.loomwright.model.loom.LoomPackage;

/**
 * What reading sources needs, and nothing of what an editor needs beside it. Put together by hand: an injector takes
 * as long to set up as all that it would make here.
 */
final class ReaderParts {
    private static final String LANGUAGE = "org.loomwright.lang.Loom";

    private final LoomGrammarAccess grammar;
    private final Blocks blocks;
    private final LineParser parser;

    ReaderParts() {
        Thread beside = new Thread(ReaderParts::tables, "language tables");
        beside.setDaemon(true);
        beside.start();
        registerMetamodels();
        GrammarProvider grammars = new GrammarProvider(LANGUAGE, () -> new XtextResourceSet());
        grammars.setClassLoader(ReaderParts.class.getClassLoader());
        grammar = new LoomGrammarAccess(grammars);
        AntlrTokenDefProvider tokens = new AntlrTokenDefProvider();
        tokens.setAntlrTokenFileProvider(new LoomAntlrTokenFileProvider());
        blocks = new Blocks(grammar, tokens);
        Factory factory = new Factory();
        factory.setConverterService(new Converters());
        parser = new LineParser(blocks);
        parser.setGrammarAccess(grammar);
        parser.setTokenDefProvider(tokens);
        parser.setElementFactory(factory);
        parser.setLexerProvider(() -> new InternalLoomLexer());
        parser.setSyntaxErrorProvider(new SyntaxErrorMessageProvider());
    }

    /**
     * Sets up what does not hang on metamodels and grammar, beside them: the tables of lexer and parser, and the names
     * of days and months that the platform looks up when EMF makes its formats of dates. Whoever needs one of these
     * before it is done waits for it.
     */
    private static void tables() {
        new SimpleDateFormat("", Locale.ENGLISH);
        new InternalLoomLexer();
        new InternalLoomParser(null);
    }

    /** Tells EMF of the metamodels of the language and of grammars, where no extension registry has done so. */
    private static void registerMetamodels() {
        EPackage.Registry.INSTANCE.putIfAbsent(LoomPackage.eNS_URI, LoomPackage.eINSTANCE);
        EPackage.Registry.INSTANCE.putIfAbsent(XtextPackage.eNS_URI, XtextPackage.eINSTANCE);
        Resource.Factory.Registry.INSTANCE.getExtensionToFactoryMap()
                .putIfAbsent("xtextbin", new BinaryGrammarResourceFactoryImpl());
    }

    LoomGrammarAccess grammar() {
        return grammar;
    }

    Blocks blocks() {
        return blocks;
    }

    LineParser parser() {
        return parser;
    }

    /** Makes model elements, of tokens their text. */
    private static final class Factory extends DefaultEcoreElementFactory {
        private final AntlrTokenToStringConverter texts = new AntlrTokenToStringConverter();

        @Override
        protected Object getTokenAsStringIfPossible(Object value) {
            return texts.getTokenAsStringIfPossible(value);
        }
    }

    /** All values are texts as they are written, but for quoted ones. */
    private static final class Converters implements IValueConverterService {
        private final IValueConverter<String> quoted = new LoomConverters().string();

        @Override
        public Object toValue(String text, String rule, INode node) {
            return isQuoted(rule) ? quoted.toValue(text, node) : text;
        }

        @Override
        public String toString(Object value, String rule) {
            return isQuoted(rule) ? quoted.toString((String) value) : value.toString();
        }

        /** Rules go by their full names, or by the short ones. */
        private static boolean isQuoted(String rule) {
            return LoomConverters.QUOTED.equals(rule) || (LANGUAGE + "." + LoomConverters.QUOTED).equals(rule);
        }
    }
}
