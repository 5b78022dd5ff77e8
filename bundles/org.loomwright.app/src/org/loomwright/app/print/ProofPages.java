// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.print;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.loomwright.app.JudgeFit.Judged;
import org.loomwright.app.PracticeWords;
import org.loomwright.app.ProveProject.Proof;
import org.loomwright.app.Tally;
import org.loomwright.app.VehicleWords;
import org.loomwright.app.print.Palette.Tone;
import org.loomwright.app.sheet.Table;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.rules.RuleInfo;
import org.loomwright.rules.Severity;

/** What came of proving a project: understood at a glance, and with what it rests on. */
public final class ProofPages {

    /** What no check looks at; {@code docs/engineering-basis.md} has the whole list. */
    private static final List<String> NOT_CHECKED = List.of("stall currents",
            "opening times that are from memory only", "worn contacts",
            "crimps and pull forces", "chafing, vibration, water and heat", "the way of the harness in the vehicle",
            "what nobody wrote down");

    /** The rules that say where a harness does not fit. */
    private static final Set<String> MISFITS = Set.of("place-not-reached", "excess-too-great", "runs-back-too-far",
            "too-long-to-park");

    private static final String BOUNDED = "circuits-bounded";
    private static final int MARGIN = 14;

    private final Palette palette;
    private final int width;

    /**
     * @param palette how words are set off
     * @param width   columns that lines may take
     */
    public ProofPages(Palette palette, int width) {
        this.palette = palette;
        this.width = width;
    }

    /**
     * The summary.
     *
     * @param threshold findings of this weight or more are objections
     * @param rules     the rules that were checked
     * @param folder    where lists are written
     * @param stale     true when lists of an earlier call are there and were left
     */
    public String summary(Proof proof, Severity threshold, List<RuleInfo> rules, String folder, boolean stale) {
        StringBuilder out = new StringBuilder();
        boolean objects = proof.report().objects(threshold);
        for (Judged judged : proof.fits()) {
            if (new FitText(judged, proof.report()).isOpen()) {
                out.append(FitMatrix.of(judged, palette, width)).append('\n');
            }
        }
        Tone tone = objects ? proof.report().worst().map(FindingText::tone).orElse(Tone.ERROR) : Tone.GOOD;
        out.append(palette.paint(Tone.HEAD, Cells.printable(proof.opened().place().name()))).append(": ")
                .append(palette.paint(tone, objects ? "not proved" : "nothing to object to")).append('\n');
        line("rests on", sources(proof.opened().project()), out);
        String uncounted = Tally.of(proof.report()).uncounted();
        line("findings", Tally.of(proof.report()).words() + (uncounted.isEmpty() ? "" : "; " + uncounted), out);
        String practice = PracticeWords.of(proof.opened().project());
        if (!practice.isEmpty()) {
            line("", Cells.printable(practice), out);
        }
        fits(proof, out);
        if (!proof.opened().project().problems().isEmpty() && !proof.fits().isEmpty()) {
            line("", FitPages.HALF_READ, out);
        }
        lists(proof, objects, folder, stale, out);
        Set<String> checked = new LinkedHashSet<>();
        Set<String> solved = new LinkedHashSet<>();
        rules.forEach(rule -> (rule.reachesEveryVehicle() ? checked : solved).add(rule.id()));
        line("checked", "for every vehicle that can exist: " + String.join(", ", checked)
                + (proof.fits().isEmpty() ? "" : "; the fit of each harness"), out);
        if (!solved.isEmpty()) {
            boolean bounded = proof.report().findings().stream().anyMatch(each -> each.rule().equals(BOUNDED));
            line("", (bounded ? "for some vehicles, as " + BOUNDED + " says: " : "for every vehicle, in every mode that"
                    + " is written: ") + String.join(", ", solved), out);
        }
        line("not checked", String.join("; ", NOT_CHECKED) + " (docs/engineering-basis.md)", out);
        return out.toString();
    }

    private void fits(Proof proof, StringBuilder out) {
        String head = "fit";
        for (Judged judged : proof.fits()) {
            FitText words = new FitText(judged, proof.report());
            line(head, words.verdict(palette), out);
            head = "";
            for (String more : List.of(words.leastMargin(), words.largestExcess())) {
                if (!more.isEmpty() && !judged.coversNothing()) {
                    line("", "    " + more, out);
                }
            }
            proof.report().findings().stream().filter(each -> MISFITS.contains(each.rule())
                    && each.element().startsWith(judged.harness().name() + ":") && each.acceptance().isPresent())
                    .forEach(each -> line("", "    " + each.acceptance().get().how().words() + ": "
                            + Cells.printable(each.sentence()), out));
        }
        if (proof.fits().isEmpty()) {
            line(head, "there is no harness of ours in this project", out);
        }
    }

    private void lists(Proof proof, boolean objects, String folder, boolean stale, StringBuilder out) {
        String place = Cells.printable(folder);
        if (objects) {
            line("lists", "none written" + (stale ? "; those in " + place + " are of an earlier call" : ""), out);
        } else if (proof.tables().isEmpty()) {
            line("lists", "none to write", out);
        } else {
            List<String> names = proof.tables().stream().map(Table::name).toList();
            line("lists", place + ": " + String.join(", ", names), out);
        }
    }

    private static String sources(Project project) {
        List<String> parts = new ArrayList<>();
        add(parts, project.sources().size(), "file", "files");
        add(parts, project.drawings().size(), "drawing", "drawings");
        add(parts, project.harnesses().size(), "harness", "harnesses");
        add(parts, project.kits().size(), "kit", "kits");
        for (PlatformView platform : project.platforms().values()) {
            parts.add(VehicleWords.count(platform.vehicles().all()) + " of " + platform.name());
        }
        return String.join(", ", parts);
    }

    private static void add(List<String> parts, int count, String one, String several) {
        if (count > 0) {
            parts.add(count + " " + (count == 1 ? one : several));
        }
    }

    /** A head, then words that go on below themselves. */
    private void line(String head, String words, StringBuilder out) {
        String indent = " ".repeat(MARGIN);
        StringBuilder line = new StringBuilder(Cells.left("  " + head, MARGIN));
        int at = MARGIN;
        boolean fresh = true;
        for (String word : words.split("(?<=\\S) ")) {
            int columns = Cells.width(Palette.unpainted(word));
            if (!fresh && at + 1 + columns > width) {
                out.append(line).append('\n');
                line = new StringBuilder(indent);
                at = MARGIN;
                fresh = true;
            }
            line.append(fresh ? "" : " ").append(word);
            at += columns + (fresh ? 0 : 1);
            fresh = false;
        }
        out.append(line).append('\n');
    }

    /** The document of {@code prove}; {@code docs/cli-json.md} describes it. */
    public static String json(Proof proof, Severity threshold, Shown shown, List<RuleInfo> rules, String folder) {
        return Json.object(json -> {
            CheckJson.head(json, "prove", threshold, proof.report().objects(threshold));
            CheckJson.project(json, proof.opened(), proof.report(), shown);
            json.name("fits");
            FitPages.harnesses(json, proof.fits(), proof.report());
            json.name("lists").beginObject();
            json.name("folder").value(folder);
            json.name("files").beginArray();
            for (Table table : proof.tables()) {
                json.value(table.name());
            }
            json.endArray();
            json.endObject();
            json.name("checked").beginArray();
            for (RuleInfo rule : rules) {
                json.value(rule.id());
            }
            json.endArray();
            json.name("notChecked").beginArray();
            for (String what : NOT_CHECKED) {
                json.value(what);
            }
            json.endArray();
        });
    }
}
