// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Part;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.ConnectorView;
import org.loomwright.harness.link.Node;

/** The connectors of a draft that a written harness has not, and what those that it has do not hold. */
final class TakenConnectors {

    private final TakingOver job;
    private final Twins twins;
    private final TakenRuns runs;
    /** By end of the draft, what it is called in ours where it was lacking, and the vehicles. */
    private final Map<Node, Map<String, Condition>> added = new LinkedHashMap<>();

    TakenConnectors(TakingOver job, Twins twins, TakenRuns runs) {
        this.job = job;
        this.twins = twins;
        this.runs = runs;
    }

    /** What ends of the draft that were lacking are called now: {@code J1:7}. */
    Map<Node, Map<String, Condition>> added() {
        return added;
    }

    /** Adds what is lacking at one connector. */
    void take(ConnectorView theirs, Map<Node, Condition> lacking) {
        Optional<ConnectorView> own = twins.connector(theirs.name()).map(name -> job.ours().connectors().get(name));
        own.ifPresent(each -> mates(theirs, each));
        Condition without = own.map(ConnectorView::when).orElse(theirs.when().vehicles().none());
        Condition anew = theirs.when().vehicles().anyOf(lacking.values()).minus(without);
        if (own.isPresent()) {
            lacking.forEach((node, when) -> pin(theirs, own.get(), node, when.and(without)));
        }
        if (!anew.isNever()) {
            String name = connector(theirs, anew);
            lacking.forEach((node, when) -> put(node, name + ":" + node.pin(), when.and(anew)));
        }
        branch(theirs).ifPresent(branch -> runs.branch(branch, theirs.when().vehicles().anyOf(lacking.values())));
    }

    private static Optional<String> branch(ConnectorView connector) {
        return connector.connector().branch().map(Ref::text);
    }

    private void put(Node node, String name, Condition when) {
        if (!when.isNever()) {
            added.computeIfAbsent(node, key -> new LinkedHashMap<>()).put(name, when);
        }
    }

    /** A cavity that ours has not wired: what it holds besides the wire, and no plug any more. */
    private void pin(ConnectorView theirs, ConnectorView own, Node node, Condition when) {
        if (when.isNever()) {
            return;
        }
        put(node, own.name() + ":" + node.pin(), when);
        for (Connector.CavityFact fact : own.connector().cavities()) {
            Condition plugged = in(own.when(), fact.when());
            if (fact.kind() == Connector.CavityKind.PLUG && fact.cavity().text().equals(node.pin())
                    && !plugged.excludes(when)) {
                job.narrow(fact.span(), fact.when(), plugged.minus(when));
                job.choose(Choice.Kind.SOCKET, own.name() + ":" + node.pin(), "no plug any more for "
                        + job.cover().words(when));
            }
        }
        List<String> lines = new ArrayList<>();
        for (Connector.CavityFact fact : theirs.connector().cavities()) {
            Condition here = in(when, fact.when());
            if (fact.cavity().text().equals(node.pin()) && fact.kind() != Connector.CavityKind.PLUG
                    && fact.kind() != Connector.CavityKind.MAP && !here.isNever()) {
                lines.add(word(fact) + job.cover().when(here, own.when().and(job.cover().whole)));
            }
        }
        if (!lines.isEmpty()) {
            lines.addFirst("// Taken over from " + job.drawings(when) + ".");
            job.additions().into(own.connector().span(), lines);
        }
    }

    private static String word(Connector.CavityFact fact) {
        return fact.kind().name().toLowerCase(Locale.ROOT) + " " + fact.cavity().text()
                + (fact.kind() == Connector.CavityKind.MAP ? " to " : " is ") + fact.value();
    }

    private Condition in(Condition vehicles, Expression when) {
        return vehicles.and(job.draft().platform().vehicles().resolve(when).condition());
    }

    /** The other half of a year that a connector of ours does not mate yet. */
    private void mates(ConnectorView theirs, ConnectorView own) {
        for (Case<ConnectorView.Mate> mate : theirs.mates()) {
            Condition wanted = mate.when().and(own.when());
            Condition same = wanted.vehicles().anyOf(own.mates().stream().filter(each -> each.value().equals(
                    mate.value())).map(Case::when).toList());
            Condition other = wanted.vehicles().anyOf(own.mates().stream().map(Case::when).toList());
            Condition open = wanted.minus(other);
            Condition differs = wanted.minus(same).and(other);
            if (!open.isNever()) {
                String words = "mates " + word(mate.value()) + " in " + job.drawings(open);
                job.choose(Choice.Kind.MATE, own.name(), words);
                job.additions().into(own.connector().span(), List.of("// Taken over: it " + words + ".", "mates "
                        + word(mate.value()) + job.cover().when(open, own.when().and(job.cover().whole))));
            }
            if (!differs.isNever() && mate.value().device()) {
                job.choose(Choice.Kind.LEFT, own.name(), "mates " + word(mate.value()) + " in "
                        + job.drawings(differs) + ", and something else here");
            }
        }
        for (Case<Part> housing : theirs.housings()) {
            Condition differs = housing.when().and(own.when()).minus(housing.when().vehicles().anyOf(own.housings()
                    .stream().filter(each -> each.value().name().equals(housing.value().name())).map(Case::when)
                    .toList()));
            if (!differs.isNever() && !own.housings().isEmpty()) {
                job.choose(Choice.Kind.LEFT, own.name(), "is " + housing.value().name().text() + " in "
                        + job.drawings(differs) + ", and something else here");
            }
        }
    }

    private static String word(ConnectorView.Mate mate) {
        return mate.device() ? mate.element() : mate.element() + " of " + mate.owner();
    }

    private String connector(ConnectorView theirs, Condition when) {
        Connector element = theirs.connector();
        String name = job.names().take(theirs.name());
        String spot = branch(theirs).map(branch -> " on " + runs.branch(branch, when))
                .or(() -> element.place().map(place -> " at " + place.text())).orElse("");
        String from = job.drawings(when);
        job.choose(Choice.Kind.SOCKET, name, "taken over from " + from + " for " + job.cover().words(when));
        Block block = new Block(job.cover(), when, "connector " + name + Block.quoted(element.title()) + spot);
        block.fact("is", values(element.housing(), when)).fact("mates", values(element.mates(), when));
        for (Connector.CavityFact fact : element.cavities()) {
            Condition here = in(when, fact.when());
            if (!here.isNever()) {
                block.line(word(fact) + job.cover().when(here, when));
            }
        }
        StringBuilder text = new StringBuilder("// Taken over from " + from + ".\n");
        block.write("", job.cover().whole, text);
        job.additions().after(job.ours().wiring().connectors().isEmpty() ? job.ours().wiring().runs().getLast().span()
                : job.ours().wiring().connectors().getLast().span(), text.toString().lines().toList());
        return name;
    }

    private Cover.Values values(List<Fact<Ref>> facts, Condition within) {
        Cover.Values values = new Cover.Values();
        Condition rest = within;
        // the last that holds is meant, so what is stated without a condition is for the others
        for (Fact<Ref> fact : facts.reversed()) {
            Condition here = in(rest, fact.when());
            values.add(fact.value().toString(), here, 0);
            rest = rest.minus(here);
        }
        return values;
    }
}
