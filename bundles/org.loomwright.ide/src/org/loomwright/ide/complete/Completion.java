// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Run;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.ide.hover.Constructs;
import org.loomwright.ide.names.Symbol;
import org.loomwright.ide.project.Moment;
import org.loomwright.lang.words.Slot;
import org.loomwright.lang.words.Word;
import org.loomwright.quantity.Cancel;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.standard.StandardRules;

/**
 * What can be written at a place. Asks the grammar what could stand there, and the project which things of that sort
 * fit. Linear in the things of the drawing, platform and stock; stateless.
 */
public final class Completion {

    private static final int WORDS_LAST = 50;

    private Completion() {
    }

    /** The proposals for a place, best first; none within a comment or a text. */
    public static List<Proposal> at(Moment moment, String file, int offset, Cancel cancel) {
        if (moment.words(file).inComment(offset)) {
            return List.of();
        }
        Asked asked = Asked.of(moment, file, offset);
        Offers offers = new Offers(asked.expected().prefix(), moment.lines(file)
                .span(asked.expected().offset(), asked.expected().prefix().length()));
        for (Slot slot : asked.expected().slots()) {
            cancel.check();
            offer(slot, asked, offers);
        }
        return offers.sorted();
    }

    private static void offer(Slot slot, Asked asked, Offers offers) {
        switch (slot.sort()) {
            case KEYWORD -> keyword(slot, asked.expected().before().isEmpty(), offers);
            case MARK -> {
                if (slot.feature().equals("relation")) {
                    offers.add(Kind.KEYWORD, slot.word(), "", "", 1);
                }
            }
            case REFERENCE -> reference(slot, asked, offers);
            case PIN -> CavityOffers.add(slot, asked, offers);
            case UNIT -> UnitOffers.add(slot, asked, offers);
            case COLOUR -> ColourOffers.add(slot, asked, offers);
            case WORD -> WordOffers.add(slot, asked, offers);
            default -> { }
        }
    }

    /** The first word of a line comes with what the line looks like. */
    private static void keyword(Slot slot, boolean first, Offers offers) {
        Optional<Constructs.Construct> construct = first ? Constructs.of(slot.rule()) : Optional.empty();
        offers.add(Kind.KEYWORD, slot.word(), construct.map(Constructs.Construct::meaning).orElse(""),
                construct.map(Constructs.Construct::form).orElse(""), first ? 0 : WORDS_LAST);
    }

    private static void reference(Slot slot, Asked asked, Offers offers) {
        switch (slot.target()) {
            case "Endable" -> EndOffers.ends(asked, offers);
            case "Mateable" -> EndOffers.mates(asked, offers);
            case "Part" -> PartOffers.add(slot, asked, offers);
            case "Place" -> PlaceOffers.places(slot, asked, offers);
            case "Point" -> PlaceOffers.points(slot, asked, offers);
            case "Choice" -> ChoiceOffers.choices(asked, offers);
            case "Axis" -> ChoiceOffers.axes(asked, offers);
            case "Member" -> ChoiceOffers.members(asked, offers);
            case "Rule" -> rules(offers);
            case "Limit" -> limits(offers);
            case "WaivedElement" -> WaiverOffers.elements(asked, offers);
            case "Item" -> {
                declared(asked, offers, Kind.DRAWING, "", Symbol.Kind.HARNESS);
                PartOffers.add(slot, asked, offers);
            }
            case "Named" -> declared(asked, offers, Kind.DRAWING, "", Symbol.Kind.DRAWING, Symbol.Kind.HARNESS,
                    Symbol.Kind.KIT, Symbol.Kind.PLATFORM);
            case "Drawing" -> drawings(slot, asked, offers);
            case "Wiring" -> declared(asked, offers, Kind.DRAWING, "", Symbol.Kind.DRAWING, Symbol.Kind.HARNESS);
            case "Platform" -> declared(asked, offers, Kind.PLATFORM, "", Symbol.Kind.PLATFORM);
            case "Kit" -> declared(asked, offers, Kind.OTHER, "", Symbol.Kind.KIT);
            case "Zone" -> ofPlatform(asked, offers, Symbol.Kind.ZONE);
            case "Position" -> ofPlatform(asked, offers, Symbol.Kind.POSITION);
            case "GroundNode" -> ofPlatform(asked, offers, Symbol.Kind.GROUND);
            case "Mode" -> ofPlatform(asked, offers, Symbol.Kind.MODE);
            case "Device" -> {
                offers.add(Kind.OTHER, "engine", "whether it runs", "", 0);
                ofPlatform(asked, offers, Symbol.Kind.DEVICE);
            }
            case "Branch" -> asked.wiring().ifPresent(view -> view.wiring().runs(Run.Kind.BRANCH).forEach(run ->
                    offers.add(Kind.POINT, run.name().text(), "branch", run.to().map(to -> "to " + to).orElse(""),
                            0)));
            case "Run" -> declared(asked, offers, Kind.POINT, asked.around().wiring(), Symbol.Kind.RUN);
            case "Breakout" -> declared(asked, offers, Kind.POINT, asked.around().wiring(), Symbol.Kind.BREAKOUT);
            case "OriginCircuit" -> asked.moment().names().declared().keySet().stream()
                    .filter(each -> each.kind() == Symbol.Kind.CIRCUIT)
                    .forEach(each -> offers.add(Kind.OTHER, each.name(), "circuit of " + each.owner(), "",
                            asked.wiring().filter(own -> own.covers().contains(each.owner())).isPresent() ? 0 : 1));
            default -> { }
        }
    }

    private static void declared(Asked asked, Offers offers, Kind kind, String owner, Symbol.Kind... kinds) {
        List<Symbol.Kind> wanted = List.of(kinds);
        asked.moment().names().declared().keySet().stream()
                .filter(each -> wanted.contains(each.kind()) && each.owner().equals(owner))
                .forEach(each -> offers.add(kind, each.name(), each.kind().words(), "", wanted.indexOf(each.kind())));
    }

    private static void ofPlatform(Asked asked, Offers offers, Symbol.Kind kind) {
        asked.platform().ifPresent(platform -> declared(asked, offers,
                kind == Symbol.Kind.DEVICE ? Kind.DEVICE : Kind.OTHER, platform.name(), kind));
    }

    /** For {@code covers}: those that are not covered yet, of the same platform. */
    private static void drawings(Slot slot, Asked asked, Offers offers) {
        List<String> written = asked.expected().before().stream()
                .filter(word -> word.slot().target().equals("Drawing")).map(Word::text).toList();
        boolean covering = slot.rule().equals("Covers");
        asked.moment().project().drawings().stream()
                .filter(view -> !written.contains(view.name()))
                .filter(view -> asked.platform().filter(each -> each.name().equals(view.platform().name())).isPresent())
                .forEach(view -> {
                    boolean samePosition = asked.wiring().flatMap(own -> own.wiring().position())
                            .flatMap(own -> view.wiring().position().map(other -> own.text().equals(other.text())))
                            .orElse(false);
                    boolean covered = asked.wiring().filter(own -> own.covers().contains(view.name())).isPresent();
                    offers.add(Kind.DRAWING, view.name(), view.wiring().title(), "",
                            covering ? (samePosition ? 0 : 2) + (covered ? 1 : 0) : covered ? 0 : 1);
                });
    }

    private static void rules(Offers offers) {
        for (RuleInfo rule : StandardRules.book().infos()) {
            offers.add(Kind.RULE, rule.id(), rule.title(), "", 0);
        }
    }

    private static void limits(Offers offers) {
        for (Limit limit : Limit.values()) {
            offers.add(Kind.OTHER, limit.word(), "usually " + limit.usual(), limit.meaning(), 0);
        }
    }

}
