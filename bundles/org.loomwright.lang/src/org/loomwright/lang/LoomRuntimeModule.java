// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import org.eclipse.xtext.conversion.IValueConverterService;
import org.eclipse.xtext.linking.ILinkingDiagnosticMessageProvider;
import org.eclipse.xtext.naming.IQualifiedNameProvider;
import org.eclipse.xtext.parser.IParser;
import org.eclipse.xtext.resource.IDefaultResourceDescriptionStrategy;
import org.eclipse.xtext.resource.XtextResource;
import org.loomwright.lang.parser.LineParser;
import org.loomwright.lang.resource.LoomResource;
import org.loomwright.lang.scoping.ExportedNames;
import org.loomwright.lang.scoping.LinkMessages;
import org.loomwright.lang.scoping.LoomNames;

/** What the language replaces of what the generator sets up. */
public class LoomRuntimeModule extends AbstractLoomRuntimeModule {

    @Override
    public Class<? extends IParser> bindIParser() {
        return LineParser.class;
    }

    @Override
    public Class<? extends IValueConverterService> bindIValueConverterService() {
        return LoomConverters.class;
    }

    @Override
    public Class<? extends XtextResource> bindXtextResource() {
        return LoomResource.class;
    }

    @Override
    public Class<? extends IQualifiedNameProvider> bindIQualifiedNameProvider() {
        return LoomNames.class;
    }

    /** Read by Guice through reflection. */
    public Class<? extends IDefaultResourceDescriptionStrategy> bindIDefaultResourceDescriptionStrategy() {
        return ExportedNames.class;
    }

    /** Read by Guice through reflection. */
    public Class<? extends ILinkingDiagnosticMessageProvider.Extended> bindILinkingDiagnosticMessageProvider() {
        return LinkMessages.class;
    }
}
