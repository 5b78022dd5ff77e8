// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.loomwright.compare.matrix.Alike;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Expression;
import org.loomwright.harness.Connector;
import org.loomwright.harness.Device;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Wiring;

/** What a draft connects: connectors, ground points and devices in line, then the circuits between them. */
final class DraftWiring {

    private final Cover cover;
    private final DraftRuns runs;
    private final NameBook names;
    private final List<Choice> choices;
    private final List<Map<String, String>> ends = new ArrayList<>();

    DraftWiring(Cover cover, DraftRuns runs, NameBook names, List<Choice> choices) {
        this.cover = cover;
        this.runs = runs;
        this.names = names;
        this.choices = choices;
        cover.views.forEach(view -> ends.add(new HashMap<>()));
    }

    /**
     * @param moved   functions that are at another place in some drawings
     * @param reasons by function, why it has one branch or two
     */
    void write(Alike alike, MovedFunctions moved, Map<String, String> reasons, StringBuilder out) {
        out.append('\n');
        for (Map<Integer, String> row : alike.connectors()) {
            String reason = reasons.getOrDefault(moved.key(row), "");
            spread(found(row, this::connector), DraftWiring::spot, Connector::title, each -> each.name().text(),
                    reason.isEmpty() ? Optional.empty() : Optional.of(new Moved(moved.places(row), reason)),
                    this::connectors, out);
        }
        for (Map<Integer, String> row : alike.studs()) {
            spread(found(row, this::stud), DraftWiring::spot, each -> "", each -> each.name().text(),
                    Optional.empty(), this::studs, out);
        }
        for (Map<Integer, Device> row : alike.devices()) {
            spread(row, each -> each.place().map(Ref::text).orElse(""), Device::title, each -> each.name().text(),
                    Optional.empty(), this::devices, out);
        }
        new DraftCircuits(cover, runs, names, choices, ends).write(alike.circuits(), out);
    }

    private Connector connector(int column, String name) {
        return cover.views.get(column).connectors().get(name).connector();
    }

    private Wiring.Stud stud(int column, String name) {
        return cover.views.get(column).studs().get(name).stud();
    }

    /** Where something is in its drawing. */
    private static String spot(Connector connector) {
        return connector.branch().map(ref -> "on " + ref.text())
                .orElse(connector.place().map(ref -> "at " + ref.text()).orElse(""));
    }

    private static String spot(Wiring.Stud stud) {
        return stud.branch().map(ref -> "via " + ref.text())
                .orElse(stud.place().map(ref -> "at " + ref.text()).orElse(""));
    }

    /** A function that may have one branch for all of its places. */
    private record Moved(String places, String reason) {
    }

    /** Writes an element from those of the drawings. */
    private interface Write<T> {
        void write(String name, Map<Integer, T> elements, StringBuilder out);
    }

    private static <T> Map<Integer, T> found(Map<Integer, String> row, BiFunction<Integer, String, T> find) {
        Map<Integer, T> elements = new TreeMap<>();
        row.forEach((column, name) -> elements.put(column, find.apply(column, name)));
        return elements;
    }

    /**
     * One element for each spot of ours: what is elsewhere in some drawings is there twice.
     *
     * @param moved where it may be one for all places, the places and why it is or is not
     */
    private <T> void spread(Map<Integer, T> elements, Function<T, String> spot, Function<T, String> title,
            Function<T, String> named, Optional<Moved> moved, Write<T> write, StringBuilder out) {
        Map<String, Map<Integer, T>> spots = new LinkedHashMap<>();
        elements.forEach((column, each) -> spots.computeIfAbsent(ours(column, spot.apply(each)),
                key -> new TreeMap<>()).put(column, each));
        Map<String, Map<Integer, T>> ours = new LinkedHashMap<>();
        List<String> all = new ArrayList<>();
        spots.forEach((at, here) -> {
            String name = names.take(named.apply(here.values().iterator().next()));
            here.forEach((column, each) -> ends.get(column).put(named.apply(each), name));
            all.add(name + " " + at + " (" + cover.names(here.keySet()) + ")");
            ours.put(name, here);
        });
        if (spots.size() > 1 || moved.isPresent()) {
            Map.Entry<String, Map<Integer, T>> first = ours.entrySet().iterator().next();
            String one = first.getKey() + " " + spots.keySet().iterator().next() + " to "
                    + moved.map(Moved::places).orElse("") + ": one branch that reaches each place";
            String words = (spots.size() > 1 ? String.join("; ", all) + ": one branch to each place" : one)
                    + moved.map(each -> "; " + each.reason).orElse("");
            String called = title.apply(first.getValue().values().iterator().next());
            choices.add(new Choice(Choice.Kind.MOVED, called.isEmpty() ? first.getKey() : called, words));
            out.append("    // It moved: ").append(words).append(".\n");
        }
        ours.forEach((name, here) -> write.write(name, here, out));
    }

    private String ours(int column, String spot) {
        int gap = spot.indexOf(' ');
        return gap < 0 ? spot : spot.substring(0, gap + 1) + runs.point(column, spot.substring(gap + 1));
    }

    private void connectors(String name, Map<Integer, Connector> row, StringBuilder out) {
        Condition own = any(row, Connector::when);
        Cover.Values housings = new Cover.Values();
        Cover.Values mates = new Cover.Values();
        Cover.Values cavities = new Cover.Values();
        String title = "";
        String spot = "";
        for (Map.Entry<Integer, Connector> each : row.entrySet()) {
            int column = each.getKey();
            Connector theirs = each.getValue();
            title = title.isEmpty() ? theirs.title() : title;
            spot = ours(column, spot(theirs));
            theirs.housing().forEach(fact -> housings.add(fact.value().toString(), cover.in(column, theirs.when(),
                    fact.when()), column));
            theirs.mates().forEach(fact -> mates.add(fact.value().toString(), cover.in(column, theirs.when(),
                    fact.when()), column));
            for (Connector.CavityFact fact : theirs.cavities()) {
                String word = switch (fact.kind()) {
                    case MAP -> "map " + fact.cavity().text() + " to ";
                    case TERMINAL -> "terminal " + fact.cavity().text() + " is ";
                    case SEAL -> "seal " + fact.cavity().text() + " is ";
                    case PLUG -> "plug " + fact.cavity().text() + " is ";
                };
                cavities.add(word + fact.value(), cover.in(column, theirs.when(), fact.when()), column);
            }
        }
        note(name, "is", housings, Choice.Kind.SOCKET, own, out);
        note(name, "mates", mates, Choice.Kind.MATE, own, out);
        if (housings.isOne() && mates.isOne() && !cover.whole.implies(own)) {
            choices.add(new Choice(Choice.Kind.PARTIAL, name, "for " + cover.words(own)));
        }
        Block block = new Block(cover, own, "connector " + name + Block.quoted(title)
                + (spot.isEmpty() ? "" : " " + spot)).fact("is", housings).fact("mates", mates);
        cavities.all().forEach((text, when) -> block.line(text + cover.when(when, own)));
        block.write("    ", cover.whole, out);
    }

    private void note(String name, String keyword, Cover.Values values, Choice.Kind kind, Condition own,
            StringBuilder out) {
        if (values.isEmpty() || values.isOne()) {
            return;
        }
        List<String> words = new ArrayList<>();
        values.all().forEach((text, when) -> words.add(text + " for " + (own.implies(when) ? "all" : cover.words(
                when)) + " (" + cover.names(values.columns(text)) + ")"));
        choices.add(new Choice(kind, name, keyword + " " + String.join("; ", words)));
        out.append("    // ").append(kind == Choice.Kind.SOCKET ? "The years have different connectors here.\n"
                : "It mates each year's own other half.\n");
    }

    private <T> Condition any(Map<Integer, T> row, Function<T, Expression> when) {
        return cover.whole.vehicles().anyOf(row.entrySet().stream().map(each -> cover.in(each.getKey(),
                when.apply(each.getValue()))).toList());
    }

    private void studs(String name, Map<Integer, Wiring.Stud> row, StringBuilder out) {
        Map.Entry<Integer, Wiring.Stud> first = row.entrySet().iterator().next();
        Wiring.Stud stud = first.getValue();
        Cover.Values grounds = new Cover.Values();
        row.forEach((column, each) -> each.ground().ifPresent(ground -> grounds.add(ground.text(), cover.in(column,
                each.when()), column)));
        if (!grounds.isEmpty() && !grounds.isOne()) {
            String words = "bolted to " + String.join(" or ", grounds.all().keySet()) + "; " + grounds.common()
                    + " chosen";
            choices.add(new Choice(Choice.Kind.LEFT, name, words));
            out.append("    // ").append(words).append(".\n");
        }
        out.append("    stud ").append(name)
                .append(stud.place().map(place -> " at " + place.text()).orElse(""))
                .append(stud.branch().map(ref -> " via " + runs.point(first.getKey(), ref.text())).orElse(""))
                .append(grounds.isEmpty() ? "" : " on " + grounds.common())
                .append(cover.when(any(row, Wiring.Stud::when), cover.whole)).append('\n');
    }

    private void devices(String name, Map<Integer, Device> row, StringBuilder out) {
        Condition own = any(row, Device::when);
        Cover.Values parts = new Cover.Values();
        row.forEach((column, each) -> each.part().forEach(fact -> parts.add(fact.value().toString(), cover.in(column,
                each.when(), fact.when()), column)));
        note(name, "is", parts, Choice.Kind.SOCKET, own, out);
        Device first = row.values().iterator().next();
        Optional<String> title = row.values().stream().map(Device::title).filter(each -> !each.isEmpty()).findFirst();
        // the part stands between title and place
        Block block = new Block(cover, own, "device " + name + Block.quoted(title.orElse(""))).fact("is", parts);
        first.place().ifPresent(place -> block.head(" at " + place.text()));
        first.grounded().ifPresent(ground -> block.head(" on " + ground.text()));
        block.head(first.returns() ? " returns" : "").write("    ", cover.whole, out);
    }
}
