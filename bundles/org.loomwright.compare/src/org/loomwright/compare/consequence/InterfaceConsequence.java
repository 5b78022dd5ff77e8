// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.consequence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.Sort;
import org.loomwright.compare.change.Space;
import org.loomwright.compare.consequence.Effect.Direction;
import org.loomwright.compare.consequence.Effect.Line;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Property;
import org.loomwright.compare.facts.Slot;
import org.loomwright.compare.facts.Stated;
import org.loomwright.compare.match.Matching;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitJudge;
import org.loomwright.harness.link.WiringView;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Severity;

/**
 * What a kit could do on the old side and can do no more: a vehicle that it is not for or does not fit any longer, a
 * neighbour or an add-on that it does not mate any longer. Sold revisions are frozen, so where the old side is one each
 * of these is an error, {@code interface-changed}. What a kit can do more than before is none.
 */
public final class InterfaceConsequence implements Consequence {

    /** The name of the finding. */
    public static final String ID = "interface-changed";

    private final FitCells cells;
    private final boolean sold;

    /**
     * @param judge    judges fits
     * @param defaults what holds where a harness states nothing
     * @param sold     true when the old side is known to be sold; otherwise it is when the kit of the new side lists
     *                 its revision as sold
     */
    public InterfaceConsequence(FitJudge judge, FitDefaults defaults, boolean sold) {
        this.cells = new FitCells(judge, defaults);
        this.sold = sold;
    }

    @Override
    public Effect of(Revision revision, Cancel cancel, Progress progress) {
        FactSheet old = revision.comparison().followed();
        List<Line> lines = new ArrayList<>();
        Set<String> frozen = new TreeSet<>();
        for (Item kit : old.items().values().stream().filter(item -> item.id().sort() == Sort.KIT).toList()) {
            String number = kit.value(Property.REVISION).map(value -> value.shown()).orElse("");
            Optional<Item> now = revision.comparison().matching().after(kit.id())
                    .flatMap(revision.comparison().now()::item);
            boolean isSold = sold || !number.isEmpty() && now.isPresent()
                    && now.get().facts().keySet().stream().anyMatch(slot -> slot.property() == Property.SOLD
                            && slot.subject().shown().equals(number));
            List<Line> own = new Kit(revision, old, kit, now, isSold, cancel).lines();
            lines.addAll(own);
            if (isSold && !own.isEmpty()) {
                frozen.add(kit.id().name() + " revision " + number);
            }
        }
        String title = frozen.isEmpty() ? "what neighbours and vehicles meet" : ID + ": sold revisions are frozen";
        return new Effect("interface", title, lines, frozen.isEmpty() ? Optional.empty()
                : Optional.of(ID + ": " + String.join(", ", frozen) + " is sold and no longer compatible"));
    }

    /** One kit of the old side. */
    private final class Kit {

        private final Revision revision;
        private final FactSheet old;
        private final FactSheet now;
        private final Matching matching;
        private final Item kit;
        private final Optional<Item> after;
        private final boolean isSold;
        private final Cancel cancel;
        private final List<Line> lines = new ArrayList<>();

        Kit(Revision revision, FactSheet old, Item kit, Optional<Item> after, boolean isSold, Cancel cancel) {
            this.revision = revision;
            this.old = old;
            this.now = revision.comparison().now();
            this.matching = revision.comparison().matching();
            this.kit = kit;
            this.after = after;
            this.isSold = isSold;
            this.cancel = cancel;
        }

        List<Line> lines() {
            if (after.isEmpty()) {
                add("kit " + kit.id().name(), "is gone", "");
                return lines;
            }
            kit.facts().forEach((slot, stated) -> {
                List<ItemId> named = slot.subject().mentions();
                if (slot.property() == Property.CONTAINS && named.getFirst().sort() == Sort.WIRING) {
                    harness(named.getFirst(), slot, stated);
                }
            });
            return lines;
        }

        private void harness(ItemId id, Slot slot, List<Stated> contained) {
            cancel.check();
            Optional<Item> before = old.item(id);
            Optional<Item> partner = matching.after(id).flatMap(now::item);
            List<Stated> containedNow = partner.map(item -> new Slot(Property.CONTAINS,
                    slot.subject().renamed(matching::name))).map(after.get()::in).orElse(List.of());
            if (before.isEmpty()) {
                return;
            }
            if (containedNow.isEmpty()) {
                add("harness " + id.name(), "is no longer in the kit", "");
                return;
            }
            vehicles(before.get(), partner.get(), contained, containedNow);
            fit(id, partner.get().id());
            new MatingFaces(revision.comparison(), old, id.name()).losses().forEach(loss ->
                    add(loss.connector(), loss.what(), loss.vehicles()));
        }

        private void vehicles(Item before, Item partner, List<Stated> contained, List<Stated> containedNow) {
            Space space = Space.of(old, now, home(now, partner.id()), matching);
            Optional<Condition> then = condition(space, old, kit, before, contained);
            Optional<Condition> here = condition(space, now, after.get(), partner, containedNow);
            then.flatMap(was -> here.map(was::minus)).filter(lost -> !lost.isNever())
                    .ifPresent(lost -> add("harness " + partner.id().name(), "is no longer for", lost.words()));
        }

        private static String home(FactSheet side, ItemId id) {
            FactSheet.Home home = side.homes().get(id.name());
            return home == null ? "" : home.platform();
        }

        private static Optional<Condition> condition(Space space, FactSheet side, Item kit, Item harness,
                List<Stated> contained) {
            List<Expression> all = new ArrayList<>(Space.conditions(side, kit));
            all.addAll(Space.conditions(side, harness));
            all.add(Expression.anyOf(contained.stream().map(Stated::when).toList()));
            return space.all(all);
        }

        private void fit(ItemId before, ItemId partner) {
            Optional<WiringView> then = revision.old().wiring(before.name());
            Optional<WiringView> here = revision.now().wiring(partner.name());
            if (then.isEmpty() || here.isEmpty()) {
                return;
            }
            Map<FitCells.Spot, FitCells.Worst> fits = cells.after(here.get(), revision.now(), cancel);
            cells.before(then.get(), revision.old(), matching, cancel).forEach((spot, was) -> {
                FitCells.Worst is = fits.get(spot);
                if (!was.cell().status().isFailure() && was.cell().figures().isPresent()
                        && (is == null || is.cell().status().isFailure())) {
                    add("harness " + partner.name(), "no longer fits " + spot.drawing() + " at " + spot.place()
                            + (is == null ? ": not covered any more" : ": " + is.cell().status().words()),
                            is == null ? was.words() : is.words());
                }
            });
        }

        private void add(String subject, String what, String vehicles) {
            lines.add(new Line(Direction.WORSE, subject, isSold ? "error[" + ID + "] " + what : what, "", "", vehicles,
                    isSold ? Optional.of(Severity.ERROR) : Optional.empty()));
        }
    }
}
