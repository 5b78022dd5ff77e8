// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.complete;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Choices;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.condition.TooManyCombinations;
import org.loomwright.harness.Platform;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.ide.complete.Proposal.Kind;
import org.loomwright.lang.words.Word;

/** The choices of the platform that can still be where a condition is written. */
final class ChoiceOffers {

    private ChoiceOffers() {
    }

    static void choices(Asked asked, Offers offers) {
        asked.platform().ifPresent(view -> {
            Platform platform = view.platform();
            Optional<Condition> so = soFar(asked, view);
            platform.groups().forEach(group -> group.members().forEach(member -> choice(member.name().text(),
                    title("one of " + group.name(), member.title()), view, so, offers)));
            platform.options().forEach(option -> choice(option.name().text(),
                    title(option.upgrade() ? "upgrade" : "option", option.title()), view, so, offers));
            platform.breaks().forEach(each -> choice(each.name().text(), title("break in " + each.year(),
                    each.title()), view, so, offers));
        });
    }

    private static String title(String what, String title) {
        return title.isEmpty() ? what : what + ": " + title;
    }

    /** Left out where no vehicle that is still meant has it. */
    private static void choice(String name, String detail, PlatformView view, Optional<Condition> so, Offers offers) {
        int rank = 0;
        String more = "";
        try {
            if (so.isPresent()) {
                Condition with = view.vehicles().resolve(new Expression.Choice(name)).condition().and(so.get());
                if (with.isNever()) {
                    return;
                }
                rank = with.equals(so.get()) ? 2 : 0;
                more = rank == 2 ? "every vehicle that is meant here has it" : "leaves " + with.tally();
            }
        } catch (TooManyCombinations e) {
            more = "";
        }
        offers.add(Kind.CHOICE, name, detail, more, rank);
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

    static void members(Asked asked, Offers offers) {
        String axis = asked.textBefore("Atom.group");
        asked.platform().flatMap(view -> view.vehicles().choices().axis(axis)).ifPresent(found -> {
            for (String member : found.members()) {
                int gap = member.indexOf(' '); // a year that is parted by a break
                offers.add(Kind.CHOICE, gap < 0 ? member : member.substring(0, gap), "of " + axis, "", 0);
            }
        });
    }

    /**
     * What is meant by what stands before on the line: the vehicles of the surroundings, and the conjunction that is
     * being written as far as its parts are simple choices and comparisons.
     */
    private static Optional<Condition> soFar(Asked asked, PlatformView view) {
        Optional<Condition> around = asked.wiring().isPresent() ? asked.vehicles()
                : Optional.of(view.vehicles().all());
        List<Word> words = asked.expected().before();
        int from = words.size();
        while (from > 0 && !isStart(words.get(from - 1).text())) {
            from--;
        }
        List<Expression> parts = new ArrayList<>();
        for (int i = from; i < words.size(); i++) {
            boolean not = words.get(i).text().equals("not");
            i += not ? 1 : 0;
            if (i < words.size() && words.get(i).slot().target().equals("Choice")) {
                Expression choice = new Expression.Choice(words.get(i).text());
                parts.add(not ? new Expression.Not(choice) : choice);
            }
        }
        try {
            return around.map(when -> when.vehicles() == view.vehicles()
                    ? view.vehicles().resolve(Expression.allOf(parts)).condition().and(when) : when);
        } catch (TooManyCombinations e) {
            return Optional.empty();
        }
    }

    private static boolean isStart(String word) {
        return word.equals("when") || word.equals("or") || word.equals("(") || word.equals("never")
                || word.equals("require");
    }
}
