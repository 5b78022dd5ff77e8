// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import org.loomwright.harness.Limit;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.lang.words.Slot;
import org.loomwright.quantity.Dimension;
import org.loomwright.quantity.SizeSystem;
import org.loomwright.quantity.Unit;

/** The units that what is measured at a place can have. */
final class UnitOffers {

    private UnitOffers() {
    }

    static void add(Slot slot, Asked asked, Offers offers) {
        String property = slot.outer();
        if (property.equals("Wire.size") || property.equals("SizeFact.size") || property.equals("SizeRow.size")) {
            for (SizeSystem system : SizeSystem.values()) {
                offers.add(Kind.UNIT, system.symbol(), system.words(), "", 0);
            }
            return;
        }
        Set<Dimension> wanted = dimensions(property, asked);
        Arrays.stream(Unit.values()).filter(unit -> wanted.contains(unit.dimension()))
                .forEach(unit -> offers.add(Kind.UNIT, unit.symbol(), unit.otherSpellings().getFirst(), "",
                        unit.ordinal()));
    }

    private static Set<Dimension> dimensions(String property, Asked asked) {
        return switch (property) {
            case "Supply.voltage" -> EnumSet.of(Dimension.VOLTAGE);
            case "Zone.ambient" -> EnumSet.of(Dimension.TEMPERATURE);
            case "Strap.resistance" -> EnumSet.of(Dimension.RESISTANCE);
            case "Join.through" -> EnumSet.of(Dimension.RESISTANCE, Dimension.CURRENT);
            case "SizeRow.mass" -> EnumSet.of(Dimension.MASS);
            case "OwnLimit.value" -> Limit.of(asked.textBefore("OwnLimit.limit"))
                    .map(limit -> EnumSet.of(limit.dimension())).orElse(EnumSet.noneOf(Dimension.class));
            case "FigureFact.from", "FigureFact.upTo" -> figure(asked);
            default -> EnumSet.of(Dimension.LENGTH);
        };
    }

    private static Set<Dimension> figure(Asked asked) {
        return switch (asked.expected().before().getFirst().text()) {
            case "rating", "current", "start", "stall", "breaking" -> EnumSet.of(Dimension.CURRENT);
            case "voltage", "pullIn", "dropOut" -> EnumSet.of(Dimension.VOLTAGE);
            case "power" -> EnumSet.of(Dimension.POWER);
            case "resistance" -> EnumSet.of(Dimension.RESISTANCE);
            case "temperature", "shortTime" -> EnumSet.of(Dimension.TEMPERATURE);
            case "mass" -> EnumSet.of(Dimension.MASS);
            case "takes" -> EnumSet.of(Dimension.AREA, Dimension.LENGTH);
            case "pull" -> EnumSet.of(Dimension.FORCE);
            default -> EnumSet.of(Dimension.LENGTH);
        };
    }
}
