// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.compose;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.loomwright.geometry.Route;
import org.loomwright.geometry.Spot;
import org.loomwright.harness.Part;
import org.loomwright.harness.Part.FigureKind;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.Case;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.Node;
import org.loomwright.harness.link.WiringView.SpliceView;
import org.loomwright.quantity.Length;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.OpenEnd;
import org.loomwright.sheets.content.Piece;
import org.loomwright.sheets.content.PieceEnd;
import org.loomwright.sheets.content.PullForce;
import org.loomwright.sheets.content.Words;
import org.loomwright.sheets.document.Block;
import org.loomwright.sheets.document.Block.Cell;
import org.loomwright.sheets.document.Block.Grid;
import org.loomwright.sheets.document.Block.Row;
import org.loomwright.sheets.document.Document;
import org.loomwright.sheets.page.Typeface;

/** The crimp and splice sheet: what is crimped on what, with first-piece sign-off, and every splice drawn. */
final class CrimpSheet {

    private final LaidHarness harness;
    private final Typeface face;

    private CrimpSheet(LaidHarness harness, Typeface face) {
        this.harness = harness;
        this.face = face;
    }

    static Document of(LaidHarness harness, Typeface face) {
        return new CrimpSheet(harness, face).document();
    }

    /** Where a figure is found that the catalogue does not have. */
    private static final String SHEET = "maker's sheet";

    private record Key(String terminal, Node.Kind at, String fits, String cable, String size, String seal) {

        private String name(LaidHarness harness) {
            return !terminal.isEmpty() ? terminal + ", " + Words.title(terminal, harness.parts())
                    : fits.isEmpty() ? "not stated" : fits;
        }
    }

    /** The figure of the terminal, else that of the standard for the conductor. */
    private static String pull(Optional<Part> terminal, Piece piece) {
        String stated = Words.figure(terminal, FigureKind.PULL);
        if (!stated.isEmpty()) {
            return stated;
        }
        OptionalDouble newtons = piece.size().isEmpty() ? OptionalDouble.empty()
                : PullForce.newtons(piece.size().get().areaMm2());
        return newtons.isEmpty() ? SHEET : Words.figure(newtons.getAsDouble(), 0) + " N, " + PullForce.BASIS;
    }

    private static String orSheet(String figure) {
        return figure.isEmpty() ? SHEET : figure;
    }

    private Document document() {
        Comparator<String> natural = new NaturalOrder();
        Map<Key, String> pulls = new HashMap<>();
        Map<Key, Set<String>> ends = new TreeMap<>(Comparator.comparing(Key::terminal, natural)
                .thenComparing(Key::at).thenComparing(Key::fits).thenComparing(Key::size, natural)
                .thenComparing(Key::cable)
                .thenComparing(Key::seal));
        for (Piece piece : harness.pieces()) {
            for (PieceEnd end : piece.ends()) {
                if (end.node().kind() != Node.Kind.SPLICE && end.node().kind() != Node.Kind.NOWHERE) {
                    Key key = new Key(end.terminal(), end.node().kind(), OpenEnd.words(harness, piece, end),
                            piece.cable(), piece.written(), end.seal());
                    pulls.putIfAbsent(key, pull(harness.part(end.terminal()), piece));
                    ends.computeIfAbsent(key, any -> new LinkedHashSet<>())
                            .add(end.label() + " (" + piece.wire() + ")");
                }
            }
        }
        List<Row> rows = new ArrayList<>();
        List<Row> data = new ArrayList<>();
        ends.forEach((key, labels) -> {
            Optional<Part> terminal = harness.part(key.terminal());
            String name = key.name(harness);
            String tool = orSheet(terminal.flatMap(each -> each.word(Part.WordKind.NOTE)).orElse(""));
            String strip = orSheet(Words.figure(terminal, FigureKind.STRIP));
            String height = orSheet(Words.figure(terminal, FigureKind.HEIGHT));
            String pull = pulls.get(key);
            rows.add(Tables.row(Cell.of(name), Cell.of(key.size() + " " + key.cable()), Cell.of(key.seal()),
                    Cell.of(strip), Cell.of(tool), Cell.of(height), Cell.of(pull),
                    Cell.of(Integer.toString(labels.size())), Cell.of(String.join(", ", labels)), Cell.box(),
                    Cell.box(), Cell.box()));
            data.add(Row.of(key.terminal(), key.terminal().isEmpty() ? name
                    : Words.title(key.terminal(), harness.parts()), key.cable(), key.size(),
                    key.seal(), strip, tool, height, pull, Integer.toString(labels.size()),
                    String.join(" ", labels)));
        });
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Grid("crimps", Tables.columns("Terminal", "Cable", "Seal", "Strip", "Tool, note",
                "Crimp height", "Least pull", "#Ends", "Where (wire)", "First: height", "Pull", "Sign"), rows));
        blocks.add(new Block.Words("Make one first piece of every line, measure its crimp height, pull it apart, write"
                + " both down and sign before the rest is made. Where \"" + SHEET + "\" stands the catalogue has no"
                + " figure: take it from the sheet of the terminal's or the device's maker and write it down; without"
                + " one, no crimp of the line goes into a harness. A pull force of " + PullForce.BASIS
                + " (from memory) is the least for the conductor, where the catalogue has none; the maker's own"
                + " decides, and is the only one for conductors thicker than 10 mm2, where the standard ends."));
        if (!harness.view().splices().isEmpty()) {
            blocks.add(new Block.Heading("Splices"));
            harness.view().splices().values().stream()
                    .filter(each -> !each.when().and(harness.vehicles()).isNever())
                    .sorted(Comparator.comparing(each -> each.splice().name().text(), natural))
                    .forEach(each -> splice(each, blocks));
        }
        return new Document(harness.name() + "-crimp-and-splice", "Crimp and splice sheet",
                harness.title() + " (" + harness.name() + ")", true, blocks,
                List.of(new Grid("crimps", Tables.columns("terminal", "title", "cable", "size", "seal", "strip",
                        "tool or note", "crimp height", "least pull", "#ends", "where"), data)));
    }

    private void splice(SpliceView splice, List<Block> blocks) {
        Node node = splice.node();
        List<Case<Spot>> spots = harness.spots().of(node);
        List<Piece> near = new ArrayList<>();
        List<Piece> far = new ArrayList<>();
        for (Piece piece : harness.pieces()) {
            if (piece.ends().stream().anyMatch(end -> end.node().equals(node))) {
                (nearer(piece.other(node).node(), spots) ? near : far).add(piece);
            }
        }
        String method = splice.splice().method().map(Ref::text).orElse("");
        Optional<Part> part = harness.part(method);
        List<String> words = new ArrayList<>();
        words.add("Splice " + node.element() + ", circuit " + splice.circuit().name().text() + " "
                + splice.circuit().title());
        words.add(station(spots));
        words.add("method: " + (method.isEmpty() ? "not stated" : Words.title(method, harness.parts())));
        part.flatMap(each -> each.word(Part.WordKind.NOTE)).ifPresent(words::add);
        String strip = Words.figure(part, FigureKind.STRIP);
        if (!strip.isEmpty()) {
            words.add("strip " + strip);
        }
        String vehicles = harness.words(splice.when());
        if (!vehicles.equals("all")) {
            words.add("only " + vehicles);
        }
        blocks.add(new Block.Picture(SplicePicture.of(harness, node.element(), near, far, face),
                String.join("; ", words)));
    }

    private String station(List<Case<Spot>> spots) {
        List<String> places = new ArrayList<>();
        for (Case<Spot> spot : spots) {
            String at = spot.value().label() + harness.tree().fromDatum(spot.value()).length()
                    .map(each -> ", " + Words.mm(each) + " mm from the datum").orElse(", station not known");
            places.add(at);
        }
        return places.isEmpty() ? "place not known" : "at " + String.join(" or ", new LinkedHashSet<>(places));
    }

    /** Whether a wire leaves the splice towards the datum. */
    private boolean nearer(Node other, List<Case<Spot>> spots) {
        if (spots.isEmpty()) {
            return false;
        }
        Spot here = spots.getFirst().value();
        for (Case<Spot> there : harness.spots().of(other)) {
            List<Route.Leg> legs = harness.tree().route(here, there.value()).legs();
            if (legs.isEmpty()) {
                continue;
            }
            Optional<Length> from = legs.getFirst().from().station().length();
            Optional<Length> to = legs.getFirst().to().station().length();
            boolean own = legs.getFirst().run().equals(here.run());
            return own && from.isPresent() && to.isPresent() && to.get().compareTo(from.get()) < 0;
        }
        return harness.tree().datum().isPresent() && here.kind() == Spot.Kind.DATUM;
    }
}
