// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Ref;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.WiringView;

/** Ground points and devices in line that wires of a draft need and a written harness has not. */
final class TakenParts {

    private final WiringView ours;
    private final WiringView draft;
    private final TakenRuns runs;
    private final NameBook names;
    private final Cover cover;
    private final List<WiringView> drawings;
    private final Additions additions;
    private final List<Choice> choices;
    private final Map<String, String> added = new HashMap<>();

    TakenParts(WiringView ours, WiringView draft, TakenRuns runs, NameBook names, Cover cover,
            List<WiringView> drawings, Additions additions, List<Choice> choices) {
        this.ours = ours;
        this.draft = draft;
        this.runs = runs;
        this.names = names;
        this.cover = cover;
        this.drawings = drawings;
        this.additions = additions;
        this.choices = choices;
    }

    /** Our stud for one of the draft that ours has not. */
    String stud(String theirs, Condition when) {
        return added.computeIfAbsent("stud " + theirs, key -> newStud(theirs, when));
    }

    /** Our device in line for one of the draft that ours has not. */
    String device(String theirs) {
        return added.computeIfAbsent("device " + theirs, key -> newDevice(theirs));
    }

    private String newStud(String theirs, Condition when) {
        WiringView.StudView view = draft.studs().get(theirs);
        String name = names.take(theirs);
        String words = "stud " + name + view.stud().place().map(ref -> " at " + ref.text()).orElse("")
                + view.stud().branch().map(ref -> " via " + runs.branch(ref.text(), when, choices)).orElse("")
                + view.stud().ground().map(ref -> " on " + ref.text()).orElse("")
                + cover.when(view.when(), cover.whole);
        choices.add(new Choice(Choice.Kind.SOCKET, name, "a ground point taken over from " + TakenWords.drawings(
                drawings, view.when())));
        additions.after(ours.wiring().studs().isEmpty() ? ours.wiring().runs().getLast().span()
                : ours.wiring().studs().getLast().span(), List.of("// Taken over from " + TakenWords.drawings(drawings,
                        view.when()) + ".", words));
        return name;
    }

    private String newDevice(String theirs) {
        DeviceView view = draft.devices().get(theirs);
        String name = names.take(theirs);
        Cover.Values parts = new Cover.Values();
        view.parts().forEach(each -> parts.add(each.value().name().text(), each.when(), 0));
        Block block = new Block(cover, view.when(), "device " + name + Block.quoted(view.device().title())).fact("is",
                parts);
        view.device().place().ifPresent(ref -> block.head(" at " + ref.text()));
        view.device().grounded().ifPresent(ref -> block.head(" on " + ref.text()));
        String from = TakenWords.drawings(drawings, view.when());
        StringBuilder text = new StringBuilder("// Taken over from " + from + ".\n");
        block.head(view.device().returns() ? " returns" : "").write("", cover.whole, text);
        choices.add(new Choice(Choice.Kind.SOCKET, name, "a device in line, taken over from " + from));
        additions.after(ours.wiring().devices().isEmpty() ? ours.wiring().runs().getLast().span()
                : ours.wiring().devices().getLast().span(), text.toString().lines().toList());
        return name;
    }
}
