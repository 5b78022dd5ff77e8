// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import com.google.inject.Binder;
import com.google.inject.Module;
import com.google.inject.name.Names;
import org.eclipse.emf.ecore.EPackage;
import org.eclipse.emf.ecore.resource.Resource;
import org.eclipse.xtext.Constants;
import org.eclipse.xtext.IGrammarAccess;
import org.eclipse.xtext.XtextPackage;
import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.parser.DefaultEcoreElementFactory;
import org.eclipse.xtext.parser.IAstFactory;
import org.eclipse.xtext.parser.ITokenToStringConverter;
import org.eclipse.xtext.parser.antlr.AntlrTokenDefProvider;
import org.eclipse.xtext.parser.antlr.AntlrTokenToStringConverter;
import org.eclipse.xtext.parser.antlr.IAntlrTokenFileProvider;
import org.eclipse.xtext.parser.antlr.ITokenDefProvider;
import org.eclipse.xtext.parser.antlr.Lexer;
import org.eclipse.xtext.parser.antlr.LexerBindings;
import org.eclipse.xtext.parser.antlr.LexerProvider;
import org.eclipse.xtext.resource.impl.BinaryGrammarResourceFactoryImpl;
import org.loomwright.lang.parser.antlr.LoomAntlrTokenFileProvider;
import org.loomwright.lang.parser.antlr.internal.InternalLoomLexer;
import org.loomwright.lang.services.LoomGrammarAccess;
import org.loomwright.model.loom.LoomPackage;

/**
 * What reading sources needs, and nothing of what an editor needs beside it; setting all of that up would take a
 * command longer than reading a small project does.
 */
final class ReadingModule implements Module {

    /** Tells EMF of the metamodels of the language and of grammars, where no extension registry has done so. */
    static void registerMetamodels() {
        EPackage.Registry.INSTANCE.putIfAbsent(LoomPackage.eNS_URI, LoomPackage.eINSTANCE);
        EPackage.Registry.INSTANCE.putIfAbsent(XtextPackage.eNS_URI, XtextPackage.eINSTANCE);
        Resource.Factory.Registry.INSTANCE.getExtensionToFactoryMap()
                .putIfAbsent("xtextbin", new BinaryGrammarResourceFactoryImpl());
    }

    @Override
    public void configure(Binder binder) {
        binder.bind(String.class).annotatedWith(Names.named(Constants.LANGUAGE_NAME))
                .toInstance("org.loomwright.lang.Loom");
        binder.bind(ClassLoader.class).toInstance(ReadingModule.class.getClassLoader());
        binder.bind(IGrammarAccess.class).to(LoomGrammarAccess.class);
        binder.bind(ITokenDefProvider.class).to(AntlrTokenDefProvider.class);
        binder.bind(IAntlrTokenFileProvider.class).to(LoomAntlrTokenFileProvider.class);
        binder.bind(InternalLoomLexer.class).toProvider(LexerProvider.create(InternalLoomLexer.class));
        binder.bind(Lexer.class).annotatedWith(Names.named(LexerBindings.RUNTIME)).to(InternalLoomLexer.class);
        binder.bind(ITokenToStringConverter.class).to(AntlrTokenToStringConverter.class);
        binder.bind(IAstFactory.class).to(DefaultEcoreElementFactory.class);
        binder.bind(IValueConverterService.class).to(LoomConverters.class);
    }
}
