// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.session;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import org.loomwright.app.EditSession;
import org.loomwright.app.load.Input;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.Project;
import org.loomwright.ide.project.Moment;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;

/**
 * One project: what is on disk, what editors have open over it, what was found. Its methods that change something are
 * called by the writing thread only, but for {@link #deep}, which runs beside it and gives way to the next change.
 */
final class ProjectSession {

    private record Buffer(int version, String text) {
    }

    private final Path root;
    private final EditSession session;
    private final Disk disk;
    private final Listener listener;
    private final Map<String, Buffer> buffers = new HashMap<>();
    private final Map<String, Published> published = new TreeMap<>();
    private final AtomicLong generation = new AtomicLong();
    private volatile Moment moment;
    /** What the rules said last, moved along with the texts; nothing of what is wrong with the texts themselves. */
    private List<Finding> ruled = List.of();

    private record Published(OptionalInt version, List<Finding> findings) {
    }

    ProjectSession(Path root, EditSession session, Moment first, Listener listener) {
        this.root = root;
        this.session = session;
        this.disk = new Disk(root);
        this.moment = first;
        this.listener = listener;
    }

    Path root() {
        return root;
    }

    Moment moment() {
        return moment;
    }

    boolean isOpen(String name) {
        return buffers.containsKey(name);
    }

    boolean hasBuffers() {
        return !buffers.isEmpty();
    }

    /** Tells whoever reads or checks that their project is about to change. May be called by any thread. */
    long disturb() {
        return generation.incrementAndGet();
    }

    /** Becomes true when the project changes after now. */
    Cancel untilDisturbed() {
        long now = generation.get();
        return () -> generation.get() != now;
    }

    /** Whether a file was read without a problem and has this very text. */
    boolean isRead(String name, String text) {
        return moment.has(name) && moment.text(name).equals(text) && moment.project().sources().stream()
                .anyMatch(source -> source.file().equals(name) && source.problems().isEmpty());
    }

    /** An editor was opened on a file and has the text that was read already: nothing else changes. */
    void openedAsRead(String name, int version, String text) {
        buffers.put(name, new Buffer(version, text));
        publish();
    }

    /** An editor has this text of a file now. */
    void buffer(String name, int version, String text) {
        Buffer before = buffers.put(name, new Buffer(version, text));
        if (before != null && before.text().equals(text) && moment.has(name)) {
            publish();
            return;
        }
        take(List.of(Input.of(name, text.getBytes(StandardCharsets.UTF_8))), List.of(), Progress.NONE);
    }

    /** The editor was closed: the file is what it is on disk. */
    void unbuffer(String name) {
        if (buffers.remove(name) != null) {
            Disk.Difference now = disk.look(name);
            take(now.changed(), now.gone(), Progress.NONE);
        }
    }

    /** Looks at the disk. Returns whether something changed there that no editor has open. */
    boolean refresh(Progress progress) {
        return apply(look(), progress);
    }

    /** What changed on disk since it was last looked at. May be called by any thread. */
    Disk.Difference look() {
        return disk.look();
    }

    /** Takes over what changed on disk. Returns whether an editor has none of it open. */
    boolean apply(Disk.Difference now, Progress progress) {
        List<Input> changed = now.changed().stream().filter(input -> !buffers.containsKey(input.name())).toList();
        List<String> gone = now.gone().stream().filter(name -> !buffers.containsKey(name)).toList();
        if (changed.isEmpty() && gone.isEmpty()) {
            return false;
        }
        disturb();
        take(changed, gone, progress);
        return true;
    }

    /** The fast half: what is wrong with texts and names, at once. */
    private void take(List<Input> changed, List<String> gone, Progress progress) {
        Map<String, String> old = new HashMap<>();
        changed.forEach(input -> old.put(input.name(), moment.text(input.name())));
        List<Finding> fast;
        Project project;
        synchronized (session) {
            fast = session.read(changed, gone, Cancel.NEVER, progress);
            project = session.project();
        }
        Set<String> lost = new HashSet<>(gone);
        List<Finding> kept = ruled.stream().filter(each -> !lost.contains(each.place().span().file())).toList();
        for (Source source : project.sources()) {
            String before = old.get(source.file());
            if (before != null && !kept.isEmpty()) {
                kept = Shifted.between(source.file(), before, source.text()).of(kept);
            }
        }
        ruled = kept;
        List<Finding> all = new ArrayList<>(fast);
        all.addAll(kept);
        all.sort(java.util.Comparator.comparing(finding -> finding.place().span()));
        moment = moment.next(project, all, false);
        publish();
    }

    /** What a whole check found. */
    record Deep(Project project, List<Finding> findings, List<Finding> ofText) {
    }

    /** The deep half: all rules. Runs beside the writing thread. */
    Deep deep(Cancel cancel, Progress progress) {
        synchronized (session) {
            cancel.check();
            List<Finding> findings = session.check(cancel, progress).findings();
            return new Deep(session.project(), findings, session.read(List.of(), List.of(), cancel, progress));
        }
    }

    /** Takes over what a whole check found, unless the project has changed meanwhile. */
    void settle(Deep deep, Cancel cancel) {
        if (cancel.cancelled()) {
            return;
        }
        Set<String> ofText = new HashSet<>();
        deep.ofText().forEach(finding -> ofText.add(finding.fingerprint()));
        ruled = deep.findings().stream().filter(finding -> !ofText.contains(finding.fingerprint())).toList();
        moment = moment.next(deep.project(), deep.findings(), true);
        publish();
        listener.settled(root);
    }

    /** Tells of what is different from what was last told. */
    private void publish() {
        Map<String, List<Finding>> now = new TreeMap<>();
        moment.project().sources().forEach(source -> now.put(source.file(), new ArrayList<>()));
        for (Finding finding : moment.findings()) {
            List<Finding> of = now.get(finding.place().span().file());
            if (finding.counts() && of != null) {
                of.add(finding);
            }
        }
        now.forEach((name, findings) -> {
            Buffer buffer = buffers.get(name);
            Published next = new Published(buffer == null ? OptionalInt.empty() : OptionalInt.of(buffer.version()),
                    List.copyOf(findings));
            Published before = published.put(name, next);
            boolean first = before == null && (buffer != null || !findings.isEmpty());
            if (first || before != null && !same(before, next)) {
                listener.findings(root.resolve(name), next.version(), moment, next.findings());
            }
        });
        List<String> gone = published.keySet().stream().filter(name -> !now.containsKey(name)).toList();
        gone.forEach(name -> {
            if (!published.remove(name).findings().isEmpty()) {
                listener.findings(root.resolve(name), OptionalInt.empty(), moment, List.of());
            }
        });
    }

    private static boolean same(Published one, Published other) {
        return Objects.equals(one.version(), other.version()) && one.findings().equals(other.findings());
    }

    /** The project is closed: nothing is wrong with it any more. */
    void forget() {
        disturb();
        published.forEach((name, last) -> {
            if (!last.findings().isEmpty()) {
                listener.findings(root.resolve(name), OptionalInt.empty(), moment, List.of());
            }
        });
        published.clear();
    }

    /** The name of a file in the project. */
    String name(Path file) {
        return root.relativize(file).toString().replace('\\', '/');
    }

    static boolean isCancelled(Throwable thrown) {
        return thrown instanceof Cancelled;
    }
}
