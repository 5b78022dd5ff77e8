// SPDX-License-Identifier: EPL-2.0
package org.loomwright.compare.draft;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.loomwright.condition.Condition;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.WiringView;

/** Ground points and devices in line that wires of a draft need and a written harness has not. */
final class TakenParts {

    private final TakingOver job;
    private final TakenRuns runs;
    private final Map<String, String> added = new HashMap<>();

    TakenParts(TakingOver job, TakenRuns runs) {
        this.job = job;
        this.runs = runs;
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
        WiringView.StudView view = job.draft().studs().get(theirs);
        String name = job.names().take(theirs);
        String words = "stud " + name + view.stud().place().map(ref -> " at " + ref.text()).orElse("")
                + view.stud().branch().map(ref -> " via " + runs.branch(ref.text(), when)).orElse("")
                + view.stud().ground().map(ref -> " on " + ref.text()).orElse("")
                + job.cover().when(view.when(), job.cover().whole);
        job.choose(Choice.Kind.SOCKET, name, "a ground point taken over from " + job.drawings(view.when()));
        job.additions().after(job.ours().wiring().studs().isEmpty() ? job.ours().wiring().runs().getLast().span()
                : job.ours().wiring().studs().getLast().span(), List.of("// Taken over from "
                        + job.drawings(view.when()) + ".", words));
        return name;
    }

    private String newDevice(String theirs) {
        DeviceView view = job.draft().devices().get(theirs);
        String name = job.names().take(theirs);
        Cover.Values parts = new Cover.Values();
        view.parts().forEach(each -> parts.add(each.value().name().text(), each.when(), 0));
        Block block = new Block(job.cover(), view.when(), "device " + name + Block.quoted(view.device().title()))
                .fact("is", parts);
        view.device().place().ifPresent(ref -> block.head(" at " + ref.text()));
        view.device().grounded().ifPresent(ref -> block.head(" on " + ref.text()));
        String from = job.drawings(view.when());
        StringBuilder text = new StringBuilder("// Taken over from " + from + ".\n");
        block.head(view.device().returns() ? " returns" : "").write("", job.cover().whole, text);
        job.choose(Choice.Kind.SOCKET, name, "a device in line, taken over from " + from);
        job.additions().after(job.ours().wiring().devices().isEmpty() ? job.ours().wiring().runs().getLast().span()
                : job.ours().wiring().devices().getLast().span(), text.toString().lines().toList());
        return name;
    }
}
