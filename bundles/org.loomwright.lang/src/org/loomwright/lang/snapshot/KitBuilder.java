// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Kit.Content;
import org.loomwright.harness.Kit.Need;
import org.loomwright.harness.Kit.Sold;
import org.loomwright.harness.Waiver;
import org.loomwright.model.loom.Contains;
import org.loomwright.model.loom.Needs;

/** Builds kits and waivers. */
final class KitBuilder extends Builder {
    private static final int MOST_PIECES = 100_000;

    KitBuilder(FileText file, Quantities quantities) {
        super(file, quantities);
    }

    Kit build(org.loomwright.model.loom.Kit source) {
        Written written = of(source);
        List<Content> contents = new ArrayList<>();
        List<Sold> sold = new ArrayList<>();
        List<Need> needs = new ArrayList<>();
        source.getFacts().forEach(fact -> {
            Written line = of(fact);
            switch (fact) {
                case Contains each -> line.ref("item").ifPresent(item -> contents.add(new Content(item,
                        lengths.number(each.getQuantity(), 1, MOST_PIECES, line.span("quantity"), "a quantity")
                                .orElse(1),
                        when(each.getWhen()), line.span())));
                case org.loomwright.model.loom.Sold each -> sold.add(new Sold(text(each.getRevision()),
                        text(each.getAt()), line.span()));
                case Needs each -> {
                    if (!needs.isEmpty()) {
                        file.again(line.span(), "kit that this one needs");
                    }
                    needs.add(new Need(line.needed("kit"), text(each.getRevision()), each.isOrLater(), line.span()));
                }
                default -> { }
            }
        });
        return new Kit(written.name("name"), text(source.getTitle()), text(source.getRevision()),
                written.ref("platform"), needs.stream().findFirst(), List.copyOf(contents), List.copyOf(sold),
                when(source.getWhen()), written.span());
    }

    Waiver build(org.loomwright.model.loom.Waiver source) {
        Written written = of(source);
        return new Waiver(written.name("name"), written.name("rule"), written.needed("target"),
                text(source.getElement()), text(source.getReason()),
                date(FileText.withoutGaps(source.getUntil()), written),
                when(source.getWhen()), written.span());
    }

    private Optional<LocalDate> date(String until, Written written) {
        if (until.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(until));
        } catch (DateTimeException e) {
            file.problems().add("date-wrong", written.span("until"), "there is no day " + until,
                    "write year, month and day: 2027-06-30");
            return Optional.empty();
        }
    }
}
