// SPDX-License-Identifier: EPL-2.0
package org.loomwright.ide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.loomwright.ide.act.Action;
import org.loomwright.rules.Finding;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.standard.StandardRules;

/**
 * Walks the rule book: what a rule proposes on the example that breaks it is offered where the finding is, and once it
 * is made the finding is gone and nothing worse has come.
 */
class FixesOfRulesTest {

    /** Rules whose broken example has a change that mends it. One that gets a change is added here. */
    private static final Set<String> MENDED = new TreeSet<>(Set.of("unknown-cavity", "waiver-unused",
            "fuse-exceeds-wire", "plug-in-wired-cavity", "never-exists",
            "place-not-reached", "excess-too-great"));

    private static Bench broken(RuleInfo rule) throws IOException {
        Path file = Bench.ROOT.resolve(rule.brokenExample());
        Path folder = Bench.ROOT.resolve(rule.brokenExample().replace(".loom", ""));
        return Files.isDirectory(folder) ? Bench.folder(folder)
                : Bench.of(file.getFileName().toString(), Files.readString(file));
    }

    @Test
    void whatTheBookProposesIsOfferedAndMends() throws IOException {
        Set<String> mended = new TreeSet<>();
        List<String> wrong = new ArrayList<>();
        int looked = 0;
        for (RuleInfo rule : StandardRules.book().infos()) {
            looked++;
            Bench bench = broken(rule).on(LocalDate.of(2026, 1, 1));
            for (Finding finding : bench.checked().findings()) {
                if (finding.counts() && finding.rule().equals(rule.id())) {
                    int made = tryAll(bench, finding, wrong);
                    if (made > 0) {
                        mended.add(rule.id());
                    }
                }
            }
        }
        assertTrue(looked > 60, "the whole book: " + looked);
        assertEquals(List.of(), wrong);
        assertEquals(MENDED, mended);
    }

    /** Slips that the examples do not show: each rule or code, and a text that has it. */
    @Test
    void changesForOtherSlipsAreOfferedAndMend() {
        List<String> wrong = new ArrayList<>();
        for (Map.Entry<String, String> slip : slips().entrySet()) {
            String code = slip.getKey().replaceFirst(" .*", "");
            Bench bench = Bench.of("a.loom", slip.getValue());
            List<Finding> found = bench.checked().findings().stream()
                    .filter(each -> each.counts() && each.rule().equals(code)).toList();
            if (found.isEmpty()) {
                wrong.add(slip.getKey() + ": not found, but " + bench.checked().findings().stream()
                        .map(Finding::rule).toList());
            }
            for (Finding finding : found) {
                if (tryAll(bench, finding, wrong) == 0) {
                    wrong.add(slip.getKey() + ": no change for \"" + finding.sentence() + "\"");
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    /** Makes each change that is offered for a finding, on a text of its own. Returns how many there were. */
    private static int tryAll(Bench bench, Finding finding, List<String> wrong) {
        String file = finding.place().span().file();
        Map<Integer, String> places = Map.of(finding.place().span().offset(), "start",
                finding.place().span().end(), "end");
        int made = 0;
        for (Finding.Fix fix : finding.fixes()) {
            for (Map.Entry<Integer, String> place : places.entrySet()) {
                if (Services.actions(bench.checked(), file, place.getKey(), place.getKey()).stream()
                        .noneMatch(action -> isOf(action, finding, fix))) {
                    wrong.add(finding.rule() + ": " + fix.title() + " is not offered at its " + place.getValue());
                }
            }
            made++;
            Bench after = bench.copy();
            fix.edits().stream().map(edit -> edit.span().file()).distinct()
                    .forEach(name -> after.with(name, bench.edited(name, fix.edits())));
            worse(bench, after, finding).ifPresent(why -> wrong.add(finding.rule() + ": \"" + fix.title() + "\": "
                    + why));
        }
        return made;
    }

    private static boolean isOf(Action action, Finding finding, Finding.Fix fix) {
        return action.finding().filter(finding::equals).isPresent() && action.edits().equals(fix.edits())
                && action.certain() == fix.certain() && !action.title().isBlank();
    }

    /** Why a change is no good: the finding is still there, or there are more errors than before, it left out. */
    private static Optional<String> worse(Bench before, Bench after, Finding finding) {
        List<Finding> now = after.checked().findings().stream().filter(Finding::counts).toList();
        if (now.stream().anyMatch(each -> each.rule().equals(finding.rule())
                && each.element().equals(finding.element()) && each.sentence().equals(finding.sentence()))) {
            return Optional.of("the finding stays");
        }
        Map<String, Integer> counts = new TreeMap<>();
        now.forEach(each -> counts.merge(each.rule(), 1, Integer::sum));
        before.checked().findings().stream().filter(Finding::counts)
                .forEach(each -> counts.merge(each.rule(), -1, Integer::sum));
        List<String> more = counts.entrySet().stream().filter(each -> each.getValue() > 0).map(Map.Entry::getKey)
                .toList();
        return more.isEmpty() ? Optional.empty() : Optional.of("it brings " + more);
    }

    private static final String SOUND = """
            platform p {
                supply 12 V negative ground
                years 1964 .. 1965
                option heater
                place box
                place rear
                ground body
                device lamp is bulb at rear on body
            }
            catalogue c {
                lamp bulb {
                    power 5 W
                    pins 1
                }
                housing block {
                    cavities 1 .. 4
                }
                cable pvc {
                    temperature 85 C
                    size 18 ga
                }
            }
            drawing d of p {
                cable pvc
                datum box
                trunk main {
                    breakout mid at 100 mm
                }
                branch b from mid to rear 900 mm
                connector J1 at box is block
                circuit 1 BK {
                    wire a 18 ga from J1:1 to lamp:1 when heater
                }
            }
            """;

    private static Map<String, String> slips() {
        Map<String, String> slips = new TreeMap<>();
        slips.put("orphan-wire (a name)", SOUND.replace("from J1:1", "from j1:1"));
        slips.put("wire-to-itself", SOUND.replace("to lamp:1 when heater", "to J1:1"));
        slips.put("part-of-wrong-kind", SOUND.replace("lamp bulb {", "seal pvcs {\n    }\n    lamp bulb {")
                .replace("        size 18 ga\n    }\n}\ndrawing d of p {\n    cable pvc\n",
                        "        size 18 ga\n    }\n}\ndrawing d of p {\n    cable pvcs\n"));
        slips.put("name-unknown (a part)", SOUND.replace("J1 at box is block", "J1 at box is blok"));
        slips.put("name-unknown (a place)", SOUND.replace("J1 at box", "J1 at boxx"));
        slips.put("condition-unknown-choice", SOUND.replace("when heater", "when heatr"));
        slips.put("unit-missing", SOUND.replace("900 mm", "900"));
        slips.put("unit-unknown", SOUND.replace("900 mm", "900 MM"));
        slips.put("unit-spacing", SOUND.replace("18 ga from", "18ga from"));
        slips.put("line-unreadable", SOUND.replace("    datum box", "    datim box"));
        slips.put("brace-line", SOUND.replace("circuit 1 BK {", "circuit 1 BK\n    {"));
        slips.put("line-joined", SOUND.replace("datum box\n", "datum box "));
        slips.put("quote-open", SOUND.replace("datum box", "sheet \"FD-12\n    datum box"));
        slips.put("comment-open", SOUND + "/* the end");
        slips.put("escape-unknown", SOUND.replace("drawing d of p", "drawing d \"a\\qb\" of p"));
        return slips;
    }
}
