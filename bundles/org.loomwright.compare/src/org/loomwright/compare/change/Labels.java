// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.change;

import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Value;
import org.loomwright.harness.link.WireView;

/** What people call an element. */
public final class Labels {

    private Labels() {
    }

    /** {@code wire 12d of front}, {@code trunk main of front}, {@code drawing front67}. */
    public static String of(Item item) {
        return sort(item) + " " + of(item.id());
    }

    /** {@code 12d of front}. */
    public static String of(ItemId id) {
        return name(id) + (id.owner().isEmpty() ? "" : " of " + FactSheet.home(id));
    }

    /** {@code 12d}. */
    public static String name(ItemId id) {
        return id.sort() == Sort.WIRE
                ? WireView.label(id.owner().substring(id.owner().lastIndexOf('/') + 1), id.name()) : id.name();
    }

    /** {@code connector P1 "Spare feed" of front}. */
    static String titled(Item item) {
        String title = item.title().isEmpty() ? "" : " \"" + item.title() + "\"";
        return sort(item) + " " + name(item.id()) + title
                + (item.id().owner().isEmpty() ? "" : " of " + FactSheet.home(item.id()));
    }

    /** The word for what it is. */
    static String sort(Item item) {
        boolean told = item.id().sort() == Sort.RUN || item.id().sort() == Sort.WIRING
                || item.id().sort() == Sort.OPTION;
        Property kind = item.id().sort() == Sort.OPTION ? Property.CHOICE_KIND : Property.KIND;
        return told ? item.value(kind).map(Value::shown).orElse(item.id().sort().word()) : item.id().sort().word();
    }
}
