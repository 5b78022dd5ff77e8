// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import org.eclipse.lsp4j.CompletionItemKind;
import org.eclipse.lsp4j.SymbolKind;
import org.loomwright.ide.complete.Proposal;
import org.loomwright.ide.names.Symbol;

/** The nearest thing that the protocol has for each of ours, so that editors show fitting icons. */
final class Kinds {

    private Kinds() {
    }

    static SymbolKind symbol(Symbol.Kind kind) {
        return switch (kind) {
            case PLATFORM, CATALOGUE -> SymbolKind.Package;
            case DRAWING, HARNESS -> SymbolKind.Module;
            case KIT, PRACTICE -> SymbolKind.Namespace;
            case PART -> SymbolKind.Class;
            case PIN, STATE -> SymbolKind.Property;
            case ZONE, PLACE, POSITION, GROUND -> SymbolKind.Constant;
            case AXIS -> SymbolKind.Enum;
            case CHOICE -> SymbolKind.EnumMember;
            case CONNECTOR, STUD, SPLICE -> SymbolKind.Interface;
            case DEVICE, PLACED -> SymbolKind.Object;
            case RUN -> SymbolKind.Struct;
            case BREAKOUT, BARRIER, BEND -> SymbolKind.Field;
            case CIRCUIT -> SymbolKind.Function;
            case WIRE -> SymbolKind.Variable;
            case STRAP, MODE, CONSTRAINT, WAIVER, RULE, LIMIT -> SymbolKind.Event;
        };
    }

    static CompletionItemKind completion(Proposal.Kind kind) {
        return switch (kind) {
            case KEYWORD -> CompletionItemKind.Keyword;
            case CONNECTOR, STUD, SPLICE -> CompletionItemKind.Interface;
            case DEVICE -> CompletionItemKind.Variable;
            case CAVITY -> CompletionItemKind.Property;
            case PART -> CompletionItemKind.Class;
            case PLACE -> CompletionItemKind.Constant;
            case POINT -> CompletionItemKind.Field;
            case CHOICE -> CompletionItemKind.EnumMember;
            case UNIT -> CompletionItemKind.Unit;
            case COLOUR -> CompletionItemKind.Color;
            case DRAWING, PLATFORM -> CompletionItemKind.Module;
            case RULE -> CompletionItemKind.Event;
            case OTHER -> CompletionItemKind.Value;
        };
    }
}
