// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.revision.SourceRevision;
import org.loomwright.condition.Condition;
import org.loomwright.fit.FitDefaults;
import org.loomwright.fit.FitJudge;
import org.loomwright.fit.FitProblem;
import org.loomwright.fit.FitReport;
import org.loomwright.harness.Kit;
import org.loomwright.harness.link.NaturalOrder;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;
import org.loomwright.rules.RuleEngine;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.sheets.SheetChoice;
import org.loomwright.sheets.SheetEngine;
import org.loomwright.sheets.SheetFile;
import org.loomwright.sheets.content.LaidHarness;
import org.loomwright.sheets.content.Order;

/**
 * Prints the documents of a kit or a harness, for all of its vehicles or for some: checks it, and prints one with
 * errors only when told to, with a stamp on every page. Writes nothing. Safe for use by several threads.
 */
public final class PrintSheets {

    private static final String STAMP = "HAS ERRORS - NOT FOR USE";

    private final RuleEngine engine;
    private final List<RuleInfo> rules;
    private final FitJudge judge;
    private final SheetEngine sheets;

    /**
     * @param engine checks
     * @param rules  what is known about the rules that it runs
     * @param judge  judges the fit
     * @param sheets prints
     */
    public PrintSheets(RuleEngine engine, List<RuleInfo> rules, FitJudge judge, SheetEngine sheets) {
        this.engine = engine;
        this.rules = List.copyOf(rules);
        this.judge = judge;
        this.sheets = sheets;
    }

    /**
     * What is asked for.
     *
     * @param name           a kit or a harness; empty for the only one that there is
     * @param vehicles       the vehicles, in the words of the language; empty for all
     * @param evenWithErrors true to print what has errors
     */
    public record Asked(String name, String vehicles, boolean evenWithErrors) {
    }

    /**
     * What came of it.
     *
     * @param order  what was printed
     * @param report what the check found
     * @param errors the errors that stand against the order
     * @param files  the files; none when there are errors and nobody asked to print all the same
     */
    public record Printed(Order order, Report report, List<Finding> errors, List<SheetFile> files) {

        public Printed {
            errors = List.copyOf(errors);
            files = List.copyOf(files);
        }
    }

    /**
     * Prints.
     *
     * @param reader reads the condition of the vehicles
     * @param choice the documents and the paper; the stamp is added where there are errors
     * @throws BadCall if nothing has that name, or the vehicles cannot be understood or do not exist
     */
    public Printed print(Opened opened, Asked asked, SourceReader reader, SheetChoice choice, Settings settings,
            Cancel cancel, Progress progress) throws BadCall {
        Project project = opened.project();
        Subject subject = subject(project, asked.name());
        Condition vehicles = subject.when();
        if (!asked.vehicles().isEmpty()) {
            vehicles = vehicles.and(ReadCondition.of("--for", asked.vehicles(), subject.platform().vehicles(), reader));
            if (vehicles.isNever()) {
                throw new BadCall(subject.name() + " is for no vehicle with " + asked.vehicles());
            }
        }
        Report report = engine.check(project, settings, cancel, progress);
        List<Finding> findings = about(report, subject, vehicles);
        List<Finding> errors = findings.stream()
                .filter(each -> each.counts() && each.severity().atLeast(Severity.ERROR)).toList();
        Map<String, FitReport> fits = new TreeMap<>();
        for (WiringView harness : subject.harnesses().keySet()) {
            progress.report("judging the fit of " + harness.name(), fits.size(), subject.harnesses().size());
            fits.put(harness.name(), judge.judge(FitProblem.of(harness, project, FitDefaults.usual()), cancel));
        }
        List<LaidHarness> laid = new ArrayList<>();
        for (Map.Entry<WiringView, Condition> each : subject.harnesses().entrySet()) {
            Condition when = each.getValue().and(vehicles).and(each.getKey().when());
            if (!when.isNever()) {
                laid.add(LaidHarness.of(each.getKey(), project.parts(), when));
            }
        }
        Order order = new Order(project, subject.platform(), subject.kit(), subject.name(), subject.title(),
                subject.kit().map(Kit::revision).orElse(""), vehicles, laid, findings, rules, fits,
                SourceRevision.of(opened.place(), project.sources()));
        if (!errors.isEmpty() && !asked.evenWithErrors()) {
            return new Printed(order, report, errors, List.of());
        }
        SheetChoice stamped = errors.isEmpty() ? choice
                : new SheetChoice(choice.kinds(), choice.paper(), Optional.of(STAMP), choice.board());
        return new Printed(order, report, errors, sheets.make(order, stamped, cancel, progress));
    }

    /** A kit or a harness. */
    private record Subject(String name, String title, Optional<Kit> kit, PlatformView platform, Condition when,
            Map<WiringView, Condition> harnesses) {
    }

    private static Subject subject(Project project, String asked) throws BadCall {
        Set<String> names = new TreeSet<>(new NaturalOrder());
        names.addAll(project.kits().keySet());
        boolean alone = names.size() == 1;
        String only = names.stream().findFirst().orElse("");
        project.harnesses().forEach(each -> names.add(each.name()));
        if (asked.isEmpty() && !alone && names.size() != 1) {
            throw new BadCall(names.isEmpty() ? "the project has no harness and no kit"
                    : "name a kit or a harness: there is " + String.join(", ", names));
        }
        String name = !asked.isEmpty() ? asked : alone ? only : names.iterator().next();
        Kit kit = project.kits().get(name);
        if (kit != null) {
            return kit(project, kit);
        }
        WiringView harness = project.wiring(name).filter(view -> view.wiring().isHarness()).orElse(null);
        if (harness == null) {
            throw new BadCall("no harness and no kit is called '" + name + "'" + (names.isEmpty()
                    ? "; the project has none" : "; there is " + String.join(", ", names)));
        }
        return new Subject(name, harness.wiring().title().isEmpty() ? name : harness.wiring().title(),
                Optional.empty(), harness.platform(), harness.when(), Map.of(harness, harness.when()));
    }

    private static Subject kit(Project project, Kit kit) throws BadCall {
        String name = kit.name().text();
        Optional<PlatformView> named = kit.platform().map(ref -> project.platforms().get(ref.text()));
        PlatformView platform = named.or(() -> kit.contents().stream()
                .flatMap(each -> project.wiring(each.item().text()).stream()).map(WiringView::platform).findFirst())
                .orElseThrow(() -> new BadCall("the kit " + name + " has no platform: write 'of' and its name"));
        Condition when = platform.vehicles().resolve(kit.when()).condition();
        Map<WiringView, Condition> harnesses = new java.util.LinkedHashMap<>();
        for (Kit.Content content : kit.contents()) {
            project.wiring(content.item().text())
                    .filter(view -> view.wiring().isHarness() && view.platform() == platform)
                    .ifPresent(view -> harnesses.merge(view,
                            platform.vehicles().resolve(content.when()).condition().and(when), Condition::or));
        }
        return new Subject(name, kit.title().isEmpty() ? name : kit.title(), Optional.of(kit), platform, when,
                harnesses);
    }

    /** The findings about the order: about its harnesses, its kit, its platform, and problems of the text. */
    private static List<Finding> about(Report report, Subject subject, Condition vehicles) {
        Set<String> owners = new HashSet<>(Set.of("", subject.name(), subject.platform().name()));
        subject.harnesses().keySet().forEach(each -> owners.add(each.name()));
        return report.findings().stream().filter(each -> owners.contains(each.element().split(":", 2)[0]))
                .filter(each -> each.affected().flatMap(Finding.Affected::condition)
                        .filter(condition -> condition.vehicles() == vehicles.vehicles())
                        .filter(vehicles::excludes).isEmpty())
                .toList();
    }
}
