// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.lsp;

import com.google.gson.Gson;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.ConfigurationItem;
import org.eclipse.lsp4j.ConfigurationParams;
import org.eclipse.lsp4j.DidChangeConfigurationCapabilities;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.WorkspaceClientCapabilities;
import org.eclipse.lsp4j.services.LanguageClient;
import org.loomwright.ide.Shown;
import org.loomwright.quantity.Unit;

/**
 * How the person at the client likes to see what is known, by the section {@value #SECTION} of its settings: asked for
 * where the client can be asked, else what it says by itself. Safe for several threads.
 */
final class Liking {

    /** The section of the client's settings. */
    static final String SECTION = "loomwright";

    private static final String UNIT = "unit";
    private static final String AMPACITY = "ampacity";

    private volatile Shown shown = Shown.USUAL;
    private volatile LanguageClient client;
    private boolean asks;
    private boolean registers;
    private boolean refreshes;

    /** How it is liked now. */
    Shown shown() {
        return shown;
    }

    /**
     * A client said what it can do, and perhaps what is liked.
     *
     * @param options what it gave along with its greeting; null for nothing
     */
    void greet(LanguageClient greeted, ClientCapabilities can, Object options, boolean asksAgain) {
        client = greeted;
        refreshes = asksAgain;
        Optional<WorkspaceClientCapabilities> workspace = Optional.ofNullable(can).map(
                ClientCapabilities::getWorkspace);
        asks = workspace.filter(each -> Boolean.TRUE.equals(each.getConfiguration())).isPresent();
        registers = workspace.map(WorkspaceClientCapabilities::getDidChangeConfiguration)
                .map(DidChangeConfigurationCapabilities::getDynamicRegistration).filter(Boolean.TRUE::equals)
                .isPresent();
        told(options);
    }

    /** Whether the client wants to be told that changes of its settings matter. */
    boolean isRegistered() {
        return registers;
    }

    /** Asks what is liked now; the answer counts when it comes. Nothing of a client that cannot be asked. */
    void ask() {
        if (asks) {
            ConfigurationItem item = new ConfigurationItem();
            item.setSection(SECTION);
            client.configuration(new ConfigurationParams(List.of(item))).whenComplete((answer, failed) -> {
                if (failed == null && answer != null && !answer.isEmpty()) {
                    take(object(answer.getFirst()));
                }
            });
        }
    }

    /** The client's settings are other ones now: the section alone, or all with it. */
    void changed(Object settings) {
        told(settings);
        ask();
    }

    private void told(Object settings) {
        Optional<JsonObject> all = object(settings);
        take(all.flatMap(each -> object(each.get(SECTION))).or(() -> all.filter(each -> each.has(UNIT)
                || each.has(AMPACITY))));
    }

    private void take(Optional<JsonObject> section) {
        if (section.isEmpty()) {
            return;
        }
        Unit unit = word(section.get(), UNIT, Unit.IN.symbol(), Unit.MM.symbol()).map(chosen -> chosen ? Unit.IN
                : Unit.MM).orElse(Shown.USUAL.unit());
        boolean both = word(section.get(), AMPACITY, "both", "judged").orElse(Shown.USUAL.secondTable());
        Shown now = new Shown(unit, both);
        boolean other = !now.equals(shown);
        shown = now;
        if (other && refreshes) {
            client.refreshInlayHints();
        }
    }

    /** Whether a setting is the one word and not the other; empty where it is not set, or is neither. */
    private Optional<Boolean> word(JsonObject section, String name, String one, String other) {
        JsonElement value = section.get(name);
        if (value == null || value.isJsonNull()) {
            return Optional.empty();
        }
        String word = value.isJsonPrimitive() ? value.getAsString() : value.toString();
        if (word.equals(one) || word.equals(other)) {
            return Optional.of(word.equals(one));
        }
        client.showMessage(new MessageParams(MessageType.Warning, "the setting " + SECTION + "." + name + " is "
                + (word.length() > 40 ? word.substring(0, 40) + "..." : word) + "; it can be " + other + " or " + one));
        return Optional.empty();
    }

    private static Optional<JsonObject> object(Object value) {
        JsonElement element = value instanceof JsonElement known ? known : new Gson().toJsonTree(value);
        return element != null && element.isJsonObject() ? Optional.of(element.getAsJsonObject()) : Optional.empty();
    }
}
