// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.loomwright.condition.Choices;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.Relation;
import org.loomwright.condition.Resolution;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Platform;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.ide.project.Meant;
import org.loomwright.lang.words.Word;

/** The choices of the platform that can still be where a condition is written. */
final class ChoiceOffers {

    private ChoiceOffers() {
    }

    static void choices(Asked asked, Offers offers) {
        asked.platform().ifPresent(view -> {
            Platform platform = view.platform();
            Optional<Condition> so = soFar(asked, view);
            boolean not = asked.expected().before().getLast().text().equals("not");
            platform.groups().forEach(group -> group.members().forEach(member -> choice(member.name().text(),
                    title("one of " + group.name(), member.title()), view, so, not, offers)));
            platform.options().forEach(option -> choice(option.name().text(),
                    title(option.upgrade() ? "upgrade" : "option", option.title()), view, so, not, offers));
            platform.breaks().forEach(each -> choice(each.name().text(), title("break in " + each.year(),
                    each.title()), view, so, not, offers));
        });
    }

    private static String title(String what, String title) {
        return title.isEmpty() ? what : what + ": " + title;
    }

    private static void choice(String name, String detail, PlatformView view, Optional<Condition> so, boolean not,
            Offers offers) {
        Expression choice = new Expression.Choice(name);
        offer(name, detail, not ? new Expression.Not(choice) : choice, view, so, offers);
    }

    /** Left out where it would leave no vehicle of those that are still meant, last where it would leave all. */
    private static void offer(String text, String detail, Expression says, PlatformView view, Optional<Condition> so,
            Offers offers) {
        int rank = 0;
        String more = "";
        try {
            if (so.isPresent()) {
                Resolution meant = view.vehicles().resolve(says);
                Condition with = meant.condition().and(so.get());
                if (with.isNever() || !meant.isGood()) {
                    return;
                }
                rank = with.equals(so.get()) ? 2 : 0;
                more = rank == 2 ? "every vehicle that is meant here has it" : "leaves " + with.tally();
            }
        } catch (TooManyCombinations e) {
            more = "";
        }
        offers.add(Kind.CHOICE, text, detail, more, rank);
    }

    static void axes(Asked asked, Offers offers) {
        asked.platform().ifPresent(view -> {
            if (view.platform().years().isPresent()) {
                offers.add(Kind.CHOICE, Choices.YEAR, "model year, " + view.platform().years().get().first() + " to "
                        + view.platform().years().get().last(), "", 1);
            }
            view.platform().groups().forEach(group -> offers.add(Kind.CHOICE, group.name().text(),
                    title("group", group.title()), "", 3));
        });
    }

    /** The members with which the comparison or the range that is begun leaves some vehicles. */
    static void members(Asked asked, Offers offers) {
        String axis = asked.textBefore("Atom.group");
        asked.platform().ifPresent(view -> view.vehicles().choices().axis(axis).ifPresent(found -> {
            Optional<Condition> so = soFar(asked, view);
            Set<String> names = new LinkedHashSet<>();
            for (String member : found.members()) {
                int gap = member.indexOf(' '); // a year that is parted by a break
                names.add(gap < 0 ? member : member.substring(0, gap));
            }
            names.forEach(name -> offer(name, "of " + axis, says(asked, axis, name, found.members()), view, so,
                    offers));
        }));
    }

    private static Expression says(Asked asked, String axis, String member, List<String> members) {
        String sign = asked.expected().before().getLast().text();
        if (sign.equals("..")) {
            return new Expression.Range(axis, asked.textBefore("Atom.from"), member);
        }
        return Relation.ofSymbol(sign).<Expression>map(relation -> new Expression.Compare(axis, relation, member))
                .orElseGet(() -> new Expression.Range(axis, member, members.getLast()));
    }

    /**
     * What is meant by what stands before on the line: the vehicles of the surroundings, and the conjunction that is
     * being written as far as it can be read. Empty where the line itself says which vehicles there are.
     */
    private static Optional<Condition> soFar(Asked asked, PlatformView view) {
        if (asked.expected().rule().equals("Never") || asked.expected().rule().equals("Requirement")) {
            return Optional.empty();
        }
        Condition around = surroundings(asked, view).filter(when -> when.vehicles() == view.vehicles())
                .orElse(view.vehicles().all());
        List<Word> words = asked.expected().before();
        int from = words.size();
        while (from > 0 && !isStart(words.get(from - 1).text())) {
            from--;
        }
        int to = words.size();
        while (to > from && !words.get(to - 1).text().equals("and")) {
            to--;
        }
        if (to - 1 <= from) {
            return Optional.of(around);
        }
        try {
            return Optional.of(Meant.conjunction(words.subList(from, to - 1))
                    .map(before -> view.vehicles().resolve(before).condition().and(around)).orElse(around));
        } catch (TooManyCombinations e) {
            return Optional.empty();
        }
    }

    /** The vehicles that have what the line belongs to; what the line says itself is being written. */
    private static Optional<Condition> surroundings(Asked asked, PlatformView view) {
        Optional<WiringView> wiring = asked.wiring();
        return switch (asked.expected().rule()) {
            case "Drawing", "Harness" -> Optional.empty();
            case "Circuit", "Connector" -> wiring.map(WiringView::when);
            case "Wire" -> asked.circuit().or(() -> wiring.map(WiringView::when));
            default -> wiring.map(each -> each.connectors().get(asked.around().connector()))
                    .map(ConnectorView::when).or(() -> wiring.isPresent() ? asked.vehicles() : Optional.empty());
        };
    }

    private static boolean isStart(String word) {
        return word.equals("when") || word.equals("or") || word.equals("(");
    }
}
