// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.WireView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.lang.words.Slot;
import org.loomwright.quantity.ConductorSize;

/** Parts of the project and of the stock that are of the right kind and fit what they are put on. */
final class PartOffers {

    private static final Set<Part.Kind> CABLES = EnumSet.of(Part.Kind.CABLE, Part.Kind.FUSIBLE_LINK,
            Part.Kind.RESISTOR_CABLE);
    private static final Set<Part.Kind> FITTED = EnumSet.of(Part.Kind.COVERING, Part.Kind.OPENING, Part.Kind.CLIP);
    private static final Set<Part.Kind> DEVICES = EnumSet.complementOf(EnumSet.of(Part.Kind.CABLE,
            Part.Kind.TERMINAL, Part.Kind.SEAL, Part.Kind.PLUG, Part.Kind.HOUSING, Part.Kind.COVERING,
            Part.Kind.OPENING, Part.Kind.SPLICE_METHOD, Part.Kind.CLIP, Part.Kind.COLOUR,
            Part.Kind.RESISTOR_CABLE));

    private PartOffers() {
    }

    static void add(Slot slot, Asked asked, Offers offers) {
        Set<Part.Kind> kinds = kinds(slot, asked);
        Predicate<Part> fits = fits(slot, asked);
        for (Part part : asked.moment().project().parts().values()) {
            if (kinds.contains(part.kind()) && fits.test(part)) {
                boolean own = !part.span().file().startsWith("stock:");
                offers.add(Kind.PART, part.name().text(), part.title().isEmpty() ? part.kind().word() : part.title(),
                        own ? "" : "of the stock", own ? 1 : 2);
            }
        }
        asked.moment().stock().heads().stream().filter(head -> kinds.stream()
                        .anyMatch(kind -> kind.word().equals(head.kind())))
                .filter(head -> !asked.moment().project().parts().containsKey(head.name()))
                .filter(head -> asked.moment().stock().part(head.name()).filter(fits).isPresent())
                .forEach(head -> offers.add(Kind.PART, head.name(), head.title().isEmpty() ? head.kind()
                        : head.title(), "of the stock", 3));
    }

    private static Set<Part.Kind> kinds(Slot slot, Asked asked) {
        return switch (slot.property()) {
            case "Connector.housing" -> EnumSet.of(Part.Kind.HOUSING);
            case "CableFact.cable", "Wire.cable" -> CABLES;
            case "Splice.method" -> EnumSet.of(Part.Kind.SPLICE_METHOD);
            case "Placed.part" -> FITTED;
            case "IsFact.part" -> asked.around().connector().isEmpty() ? DEVICES : EnumSet.of(Part.Kind.HOUSING);
            case "Device.part" -> DEVICES;
            case "Contains.item" -> EnumSet.complementOf(EnumSet.of(Part.Kind.COLOUR));
            case "CavityFact.part" -> switch (asked.expected().before().getFirst().text()) {
                case "terminal" -> EnumSet.of(Part.Kind.TERMINAL);
                case "seal" -> EnumSet.of(Part.Kind.SEAL);
                default -> EnumSet.of(Part.Kind.PLUG);
            };
            case "Part.base" -> asked.expected().before().stream().findFirst().map(word -> kind(word.text()))
                    .orElse(EnumSet.allOf(Part.Kind.class));
            default -> EnumSet.allOf(Part.Kind.class);
        };
    }

    private static Set<Part.Kind> kind(String word) {
        Set<Part.Kind> found = EnumSet.noneOf(Part.Kind.class);
        for (Part.Kind each : Part.Kind.values()) {
            if (each.word().equals(word)) {
                found.add(each);
            }
        }
        return found;
    }

    private static Predicate<Part> fits(Slot slot, Asked asked) {
        return switch (slot.property()) {
            case "CavityFact.part" -> inCavity(asked);
            case "Wire.cable" -> part -> asked.wire().map(wire -> isMadeIn(part, wire.sizes())).orElse(true);
            case "CableFact.cable" -> part -> asked.around().wire().isEmpty()
                    || asked.wire().map(wire -> isMadeIn(part, wire.sizes())).orElse(true);
            case "Part.base" -> part -> !part.name().text().equals(asked.around().part());
            default -> part -> true;
        };
    }

    /** A cable that lists its sizes is made in those only. */
    private static boolean isMadeIn(Part cable, List<Case<ConductorSize>> sizes) {
        return cable.sizes().isEmpty() || sizes.stream().allMatch(size -> cable.sizes().stream()
                .anyMatch(row -> row.size().equals(size.value())));
    }

    /** A terminal takes the wires of its cavity and is of the housing's family; a seal fits round the wire. */
    private static Predicate<Part> inCavity(Asked asked) {
        Optional<WiringView> view = asked.wiring();
        Optional<ConnectorView> connector = view.map(each -> each.connectors().get(asked.around().connector()));
        String cavity = asked.textBefore("CavityFact.cavity");
        if (connector.isEmpty() || cavity.isEmpty()) {
            return part -> true;
        }
        List<WireView> wires = Cavities.in(view.get(), connector.get().cavity(cavity), Optional.empty(),
                Optional.empty());
        List<String> families = connector.get().housings().stream()
                .flatMap(each -> each.value().word(Part.WordKind.FAMILY).stream()).toList();
        return part -> {
            boolean family = families.isEmpty() || part.word(Part.WordKind.FAMILY).map(families::contains)
                    .orElse(true);
            return family && switch (part.kind()) {
                case TERMINAL -> wires.stream().allMatch(wire -> wire.sizes().stream()
                        .allMatch(size -> Takes.section(part, size.value())));
                case SEAL -> wires.stream().allMatch(wire -> Takes.insulation(part, FigureKind.FITS, wire));
                default -> true;
            };
        };
    }
}
