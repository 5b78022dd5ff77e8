// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.facts;

import java.util.Set;
import org.loomwright.compare.Sort;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Waiver;

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

    /** A waiver is known by its name, else by what it accepts. */
    static ItemBuilder of(Waiver waiver) {
        String accepts = waiver.rule().text() + " of " + waiver.target().text()
                + (waiver.element().isEmpty() ? "" : ":" + waiver.element());
        ItemBuilder item = new ItemBuilder(Sort.WAIVER, waiver.target().text(),
                waiver.name().text().isEmpty() ? accepts : waiver.name().text(), waiver.span()).exists(waiver.when())
                .word(Property.ACCEPTS, accepts).word(Property.REASON, waiver.reason());
        waiver.until().ifPresent(day -> item.word(Property.UNTIL, day.toString()));
        return item;
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
