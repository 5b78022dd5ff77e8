// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide.project;

import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitProblem;
import org.loomwright.fit.FitReport;
import org.loomwright.geometry.HarnessLayout;
import org.loomwright.harness.LineIndex;
import org.loomwright.harness.Part;
import org.loomwright.harness.Source;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.ide.names.Names;
import org.loomwright.lang.words.WordLines;
import org.loomwright.lang.words.WordReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Cancelled;
import org.loomwright.rules.Finding;

/**
 * A project at one moment, unsaved texts included. What services need besides the joined sources is made when somebody
 * asks, once; what did not change since the moment before is taken over. Safe for use by several threads.
 */
public final class Moment {

    private final long number;
    private final Project project;
    private final List<Finding> findings;
    private final boolean settled;
    private final WordReader reader;
    private final StockParts stock;
    private final Map<String, Source> sources = new HashMap<>();
    private final Map<String, WordLines> words = new ConcurrentHashMap<>();
    private final Map<String, WordLines> earlier = new HashMap<>();
    private final Map<String, LineIndex> lines = new ConcurrentHashMap<>();
    private final Map<String, InFile> declared = new ConcurrentHashMap<>();
    /** By identity: a view is large, and what did not change is the same object. */
    private final Map<WiringView, HarnessLayout> layouts = Collections.synchronizedMap(new IdentityHashMap<>());
    private final Map<WiringView, FitReport> fits = Collections.synchronizedMap(new IdentityHashMap<>());
    /** Of the project: shared by the moments that have the same one, so that what is solved late is not lost. */
    private Solving solving = new Solving();
    private volatile Names names;

    /** The names that a file gives, with the words that they were read off. */
    private record InFile(WordLines words, List<Names.Declared> names) {
    }

    /** What was solved of a project, and who waits for more. */
    private static final class Solving {
        private final Map<PlatformView, Flows> flows = Collections.synchronizedMap(new IdentityHashMap<>());
        private volatile boolean wanted;
        private volatile boolean welcome;
        private volatile boolean failed;
    }

    private Moment(long number, Project project, List<Finding> findings, boolean settled, WordReader reader,
            StockParts stock) {
        this.number = number;
        this.project = project;
        this.findings = List.copyOf(findings);
        this.settled = settled;
        this.reader = reader;
        this.stock = stock;
        project.everySource().forEach(source -> sources.put(source.file(), source));
    }

    /** The first moment of a project. */
    public static Moment first(Project project, List<Finding> findings, boolean settled, WordReader reader,
            StockParts stock) {
        return new Moment(1, project, findings, settled, reader, stock);
    }

    /** The moment after this one: with another project or other findings. */
    public Moment next(Project after, List<Finding> found, boolean whole) {
        Moment next = new Moment(number + 1, after, found, whole, reader, stock);
        next.earlier.putAll(earlier);
        next.earlier.putAll(words);
        next.earlier.keySet().retainAll(next.sources.keySet());
        next.declared.putAll(declared);
        next.declared.keySet().retainAll(next.sources.keySet());
        boolean sameParts = after.parts().equals(project.parts());
        if (sameParts) {
            after.wirings().values().forEach(view -> {
                HarnessLayout layout = layouts.get(view);
                if (layout != null) {
                    next.layouts.put(view, layout);
                }
            });
        }
        if (after == project) {
            next.fits.putAll(fits);
            next.solving = solving;
            next.words.putAll(words);
        }
        return next;
    }

    /** Counts up with every change. */
    public long number() {
        return number;
    }

    /** The joined sources. */
    public Project project() {
        return project;
    }

    /** What is known to be wrong, of all files, ordered by file and place. */
    public List<Finding> findings() {
        return findings;
    }

    /** The findings of one file. */
    public List<Finding> findings(String file) {
        return findings.stream().filter(finding -> finding.place().span().file().equals(file)).toList();
    }

    /** Whether all rules were asked about what the texts say now. */
    public boolean settled() {
        return settled;
    }

    /** Whether there is such a file, the files of the stock that the project uses included. */
    public boolean has(String file) {
        return sources.containsKey(file);
    }

    /** The text of a file; empty text for one that is not there. */
    public String text(String file) {
        Source source = sources.get(file);
        return source == null ? "" : source.text();
    }

    /** Where lines start in a file. */
    public LineIndex lines(String file) {
        return lines.computeIfAbsent(file, name -> new LineIndex(name, text(name)));
    }

    /** What the words of a file are. */
    public WordLines words(String file) {
        return words.computeIfAbsent(file,
                name -> reader.read(text(name), Optional.ofNullable(earlier.get(name))));
    }

    /** The names that a file gives, in order. */
    public List<Names.Declared> declared(String file) {
        WordLines now = words(file);
        InFile known = declared.get(file);
        if (known == null || known.words() != now) {
            known = new InFile(now, Names.in(now, lines(file)));
            declared.put(file, known);
        }
        return known.names();
    }

    /** Tells what could stand at a place. */
    public WordReader.Expected expected(String file, int offset) {
        return reader.expected(words(file), offset);
    }

    /** Which names are given where. */
    public Names names() {
        Names known = names;
        if (known == null) {
            known = Names.of(this);
            names = known;
        }
        return known;
    }

    /** The stock that is shipped. */
    public StockParts stock() {
        return stock;
    }

    /** A part of the project or, if it has none of that name, of the stock. */
    public Optional<Part> part(String name) {
        return Optional.ofNullable(project.parts().get(name)).or(() -> stock.part(name));
    }

    /** A drawing or harness with its wires laid along its tree. */
    public HarnessLayout layout(WiringView view) {
        return layouts.computeIfAbsent(view, each -> HarnessLayout.of(each, project.parts()));
    }

    /** How a harness of ours fits the drawings that it covers. May take long; asked for once. */
    public FitReport fit(WiringView harness, Cancel cancel) {
        FitReport known = fits.get(harness);
        if (known == null) {
            known = new ChainJudge().judge(FitProblem.of(harness, project, FitDefaults.usual()), cancel);
            fits.putIfAbsent(harness, known);
        }
        return known;
    }

    /**
     * What flows in the circuits of a platform, if it was solved already. That takes seconds, so whoever asks does not
     * wait: it is {@linkplain #isSolvingWanted wanted} from now on.
     */
    public Optional<Flows> flows(PlatformView platform) {
        Flows known = solving.flows.get(platform);
        solving.wanted |= known == null && !solving.failed;
        return Optional.ofNullable(known);
    }

    /**
     * The same for one who is in no hurry: solving is {@linkplain #isSolvingWelcome welcome} from now on, once all
     * rules have been asked.
     */
    public Optional<Flows> flowsSomeTime(PlatformView platform) {
        Flows known = solving.flows.get(platform);
        solving.welcome |= known == null && !solving.failed;
        return Optional.ofNullable(known);
    }

    /** Whether somebody asked for what flows before it was known. */
    public boolean isSolvingWanted() {
        return solving.wanted;
    }

    /** Whether somebody would show what flows if it were known. */
    public boolean isSolvingWelcome() {
        return solving.welcome;
    }

    /** Whether solving broke off by a fault of ours; what flows stays unknown then. */
    public boolean hasSolvingFailed() {
        return solving.failed;
    }

    /** Solves the circuits of all platforms that are not solved yet. What failed once is not tried again. */
    public void solve(Cancel cancel) {
        boolean over = false;
        try {
            for (PlatformView platform : project.platforms().values()) {
                if (!solving.flows.containsKey(platform)) {
                    solving.flows.put(platform, Flows.of(project, platform, cancel));
                }
            }
            over = true;
        } catch (Cancelled changed) {
            throw changed;
        } catch (RuntimeException fault) {
            solving.failed = true;
            over = true;
            throw fault;
        } finally {
            if (over) {
                solving.wanted = false;
                solving.welcome = false;
            }
        }
    }
}
