// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.Map;
import java.util.Set;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Waiver;
import org.loomwright.harness.link.WireView;

/** What a kit, a waiver and a practice state. */
final class KitFacts {

    private static final Expression ALWAYS = new Expression.Always();

    private KitFacts() {
    }

    static ItemBuilder of(Kit kit, Set<String> wirings) {
        ItemBuilder item = new ItemBuilder(Sort.KIT, "", kit.name().text(), kit.span()).exists(kit.when())
                .word(Property.TITLE, kit.title()).word(Property.REVISION, kit.revision())
                .ref(Property.PLATFORM, kit.platform(), Sort.PLATFORM, "");
        kit.needs().ifPresent(need -> item.put(Property.NEEDS, Value.mention(Sort.KIT, "", need.kit().text())
                .and(need.revision().isEmpty() ? "" : " revision " + need.revision()
                        + (need.orLater() ? " or later" : "")), need.span()));
        for (Kit.Content content : kit.contents()) {
            Sort sort = wirings.contains(content.item().text()) ? Sort.WIRING : Sort.PART;
            item.put(new Slot(Property.CONTAINS, Value.mention(sort, "", content.item().text())),
                    Value.word(Integer.toString(content.quantity())), content.when(), content.span());
        }
        kit.sold().forEach(sold -> item.put(new Slot(Property.SOLD, Value.word(sold.revision())),
                Value.word(sold.at()), ALWAYS, sold.span()));
        return item;
    }

    /**
     * A waiver is known by its name, else by what it accepts.
     *
     * @param named the elements of what waivers name, as they name them: {@code front}, {@code front:12b}
     */
    static ItemBuilder of(Waiver waiver, Map<String, ItemId> named) {
        String target = waiver.target().text();
        Value accepted = Value.word(waiver.rule().text() + " of ").and(mention(named.get(target), target));
        if (!waiver.element().isEmpty()) {
            accepted = accepted.and(":").and(mention(named.get(target + ":" + waiver.element()), waiver.element()));
        }
        String accepts = accepted.shown();
        ItemBuilder item = new ItemBuilder(Sort.WAIVER, waiver.target().text(),
                waiver.name().text().isEmpty() ? accepts : waiver.name().text(), waiver.span()).exists(waiver.when())
                .put(Property.ACCEPTS, accepted, waiver.span()).word(Property.REASON, waiver.reason());
        waiver.until().ifPresent(day -> item.word(Property.UNTIL, day.toString()));
        return item;
    }

    /** The name that findings and waivers have for an element within its owner: {@code 12b} for a wire. */
    static String label(ItemId id) {
        return id.sort() == Sort.WIRE ? WireView.label(circuit(id), id.name()) : id.name();
    }

    private static String circuit(ItemId wire) {
        return wire.owner().substring(wire.owner().lastIndexOf('/') + 1);
    }

    /** The name of an element; that of a wire is made of those of its circuit and its own. */
    private static Value mention(ItemId id, String words) {
        if (id == null) {
            return Value.word(words);
        }
        Value own = Value.mention(id.sort(), id.owner(), id.name());
        if (id.sort() != Sort.WIRE) {
            return own;
        }
        String circuit = circuit(id);
        String between = words.substring(circuit.length(), words.length() - id.name().length());
        Value start = Value.mention(Sort.CIRCUIT, FactSheet.home(id), circuit);
        return between.isEmpty() ? start.and(own) : start.and(between).and(own);
    }

    /** How rules are treated, and the figures that are set, each with its reason. */
    static ItemBuilder of(Practice practice) {
        ItemBuilder item = new ItemBuilder(Sort.PRACTICE, "", practice.name().text(), practice.span()).exists(ALWAYS)
                .word(Property.TITLE, practice.title()).ref(Property.PLATFORM, practice.platform(), Sort.PLATFORM, "");
        practice.treatments().forEach(each -> item.put(new Slot(Property.TREATS, Value.word(each.rule().text())),
                Value.word("as " + each.weight().words() + " because " + each.reason()), ALWAYS, each.span()));
        practice.settings().forEach(each -> item.put(new Slot(Property.LIMIT, Value.word(each.limit().word())),
                Value.word(each.value() + ", source " + each.source()), ALWAYS, each.span()));
        return item;
    }
}
