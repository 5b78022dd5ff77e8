// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.adopt;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Map;
import org.loomwright.compare.Comparison;
import org.loomwright.compare.ItemId;
import org.loomwright.compare.change.Change;
import org.loomwright.compare.change.Delta;
import org.loomwright.compare.facts.FactSheet;
import org.loomwright.compare.facts.Item;
import org.loomwright.compare.facts.Stated;
import org.loomwright.harness.Span;
import org.loomwright.harness.TextEdit;

/**
 * Takes one change of a comparison over: gives the edits after which one side states what the other one does. Works on
 * the lines of the sources, so that what surrounds the change keeps every byte; an element brings the comment lines
 * right above it. Pure; linear in the size of the two files and the number of elements.
 */
public final class AdoptChange {

    private final Comparison comparison;
    private final boolean toNew;
    private final SourceLines from;
    private final SourceLines to;

    private AdoptChange(Comparison comparison, boolean toNew, SourceLines from, SourceLines to) {
        this.comparison = comparison;
        this.toNew = toNew;
        this.from = from;
        this.to = to;
    }

    /**
     * What came of it.
     *
     * @param edits   the edits of the side that is changed; empty when it is refused
     * @param refusal why not, one sentence; empty when there are edits
     */
    public record Adopted(List<TextEdit> edits, String refusal) {

        public Adopted {
            edits = List.copyOf(edits);
        }

        static Adopted refused(String why) {
            return new Adopted(List.of(), why);
        }
    }

    /**
     * Takes a change over.
     *
     * @param change     one of the comparison
     * @param toNew      true to have the new side state what the old one does, which undoes the change; false to have
     *                   the old side state what the new one does
     * @param oldText    text of the file of the old side that the change is in
     * @param newText    the same of the new side
     * @param targetFile name of the file that is changed
     */
    public static Adopted take(Comparison comparison, Change change, boolean toNew, String oldText, String newText,
            String targetFile) {
        SourceLines source = new SourceLines("", toNew ? oldText : newText);
        SourceLines target = new SourceLines(targetFile, toNew ? newText : oldText);
        return new AdoptChange(comparison, toNew, source, target).take(change);
    }

    private Adopted take(Change change) {
        Optional<Span> here = toNew ? change.before() : change.after();
        Optional<Span> there = toNew ? change.after() : change.before();
        return switch (change.kind()) {
            case ADDED, REMOVED -> here.isPresent() ? insert(change.item(), here.get())
                    : there.map(span -> new Adopted(List.of(to.removal(span)), ""))
                    .orElse(Adopted.refused("it has no place in the text"));
            case CHANGED, REWORDED -> restated(change);
            case SWAPPED, RENAMED, MOVED, SPLIT, JOINED, REORDERED -> Adopted.refused(
                    "what is " + change.kind().words() + " cannot be taken over alone; edit the text");
        };
    }

    private Adopted restated(Change change) {
        List<TextEdit> edits = new ArrayList<>();
        for (Delta delta : change.deltas()) {
            if (!(delta instanceof Delta.Restated restated)) {
                return Adopted.refused("it is no change of one element; edit the text");
            }
            List<Stated> source = toNew ? restated.was() : restated.is();
            List<Stated> target = toNew ? restated.is() : restated.was();
            Optional<Item> home = item(restated.item(), false);
            Optional<Item> origin = item(restated.item(), true);
            if (home.isEmpty() || origin.isEmpty()) {
                return Adopted.refused("the element is not on both sides");
            }
            edits.addAll(restated(source, target, origin.get().span(), home.get().span()));
        }
        return edits.isEmpty() ? Adopted.refused("nothing of it stands in the text") : new Adopted(edits, "");
    }

    private List<TextEdit> restated(List<Stated> source, List<Stated> target, Span origin, Span home) {
        if (source.size() == 1 && target.size() == 1) {
            return List.of(new TextEdit(target.getFirst().span(), from.text(source.getFirst().span())));
        }
        boolean header = source.stream().anyMatch(each -> from.line(each.span()) == from.line(origin))
                || target.stream().anyMatch(each -> to.line(each.span()) == to.line(home));
        if (header) {
            return List.of(to.replaceLine(home, from.lineText(origin)));
        }
        List<TextEdit> edits = new ArrayList<>();
        target.stream().map(each -> to.line(each.span())).distinct().forEach(line -> edits.add(to.removal(line)));
        StringBuilder lines = new StringBuilder();
        source.stream().map(each -> from.line(each.span())).distinct().forEach(line ->
                lines.append(from.lineText(line)).append(to.lineEnd()));
        if (!lines.isEmpty()) {
            int at = target.isEmpty() ? to.start(to.line(home) + 1) : to.start(to.line(target.getFirst().span()));
            edits.add(0, to.insertion(at, lines.toString()));
        }
        return edits;
    }

    /** An element that the target does not have: behind the nearest one before it that both sides have. */
    private Adopted insert(ItemId id, Span span) {
        String text = from.block(span, to.lineEnd());
        Optional<Span> before = items(true).values().stream()
                .filter(item -> item.span().file().equals(span.file()) && item.span().end() <= span.offset())
                .filter(item -> item.id().owner().equals(id.owner()))
                .sorted(Comparator.comparing((Item item) -> item.span().offset()).reversed())
                .flatMap(item -> other(item.id()).stream())
                .map(Item::span).filter(found -> found.file().equals(to.file())).findFirst();
        if (before.isPresent()) {
            return new Adopted(List.of(to.insertion(to.after(before.get()), text)), "");
        }
        Optional<Span> home = around(span).filter(found -> found.file().equals(to.file()));
        if (home.isPresent()) {
            return new Adopted(List.of(to.insertion(to.start(to.line(home.get()) + 1), text)), "");
        }
        return id.owner().isEmpty() || !items(false).isEmpty() && home(id).isEmpty()
                ? new Adopted(List.of(to.insertion(to.length(), to.lineEnd() + text)), "")
                : Adopted.refused("there is no place for it on the other side; edit the text");
    }

    private Optional<Item> home(ItemId id) {
        String name = FactSheet.home(id);
        return items(false).values().stream().filter(item -> item.id().owner().isEmpty()
                && item.id().name().equals(name)).findFirst();
    }

    /** Where the innermost element around a place stands on the other side. */
    private Optional<Span> around(Span span) {
        return items(true).values().stream()
                .filter(item -> item.span().file().equals(span.file()) && item.span().offset() < span.offset()
                        && span.end() <= item.span().end())
                .max(Comparator.comparing(item -> item.span().offset()))
                .flatMap(item -> other(item.id())).map(Item::span);
    }

    private Map<ItemId, Item> items(boolean source) {
        return (source == toNew ? comparison.old() : comparison.now()).items();
    }

    /** An element of the new side's name (or of the old one's, when it is gone), on one side. */
    private Optional<Item> item(ItemId id, boolean source) {
        FactSheet side = source == toNew ? comparison.old() : comparison.now();
        ItemId named = source == toNew ? comparison.matching().reversed().getOrDefault(id, id) : id;
        return side.item(named);
    }

    /** The partner of an element of the source's side. */
    private Optional<Item> other(ItemId id) {
        return toNew ? Optional.ofNullable(comparison.matching().partners().get(id)).flatMap(comparison.now()::item)
                : Optional.ofNullable(comparison.matching().reversed().get(id)).flatMap(comparison.old()::item);
    }
}
