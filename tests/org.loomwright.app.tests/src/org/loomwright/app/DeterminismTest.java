// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;
import org.loomwright.app.CompareRevisions.Compared;
import org.loomwright.app.OpenProject.Opened;
import org.loomwright.app.ProveProject.Proof;
import org.loomwright.app.load.Input;
import org.loomwright.app.load.ProjectPlace;
import org.loomwright.app.print.CheckJson;
import org.loomwright.app.print.CheckJunit;
import org.loomwright.app.print.CheckSarif;
import org.loomwright.app.print.CheckText;
import org.loomwright.app.print.CompareJson;
import org.loomwright.app.print.ComparePage;
import org.loomwright.app.print.CompareText;
import org.loomwright.app.print.FitPages;
import org.loomwright.app.print.Palette;
import org.loomwright.app.print.ProofPages;
import org.loomwright.app.print.Shown;
import org.loomwright.app.sheet.Csv;
import org.loomwright.app.sheet.Table;
import org.loomwright.fit.ChainJudge;
import org.loomwright.fit.FitDefaults;
import org.loomwright.lang.SourceReader;
import org.loomwright.quantity.Cancel;
import org.loomwright.quantity.Progress;
import org.loomwright.rules.Report;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import org.loomwright.rules.standard.StandardRules;

/** Equal input gives byte-identical output. */
class DeterminismTest {

    private static final Shown EVERYTHING = new Shown(true, true, true);

    private final SourceReader reader = Repository.reader();

    /** Everything that is ever printed or written of the largest example. */
    private String everything(int threads, boolean backwards) throws BadCall {
        ProjectPlace found = ProjectPlace.findOne(Repository.root().resolve("docs/examples"), "orrin");
        List<Input> inputs = new ArrayList<>(found.inputs());
        if (backwards) {
            Collections.reverse(inputs);
        }
        Opened opened = new OpenProject(reader, threads).open(
                new ProjectPlace(found.name(), found.root(), found.prefix(), inputs), Cancel.NEVER, Progress.NONE);
        Proof proof = new ProveProject(StandardRules.engine(), new JudgeFit(new ChainJudge(), FitDefaults.usual()))
                .prove(opened, Settings.TIMELESS, Severity.ERROR, Cancel.NEVER, Progress.NONE);
        Report report = proof.report();
        StringBuilder all = new StringBuilder();
        all.append(new CheckText(Palette.PLAIN).findings(opened, report, EVERYTHING));
        all.append(new CheckText(Palette.PLAIN).summary(Checked.of(opened, report)));
        all.append(CheckJson.of(List.of(Checked.of(opened, report)), Severity.WARNING, EVERYTHING));
        all.append(FitPages.text(opened.project(), proof.fits(), report, Palette.PLAIN, 120));
        all.append(FitPages.json(opened, proof.fits(), report, Severity.WARNING));
        all.append(ProofPages.json(proof, Severity.WARNING, EVERYTHING, StandardRules.book().infos(), "out"));
        all.append(new ProofPages(Palette.PLAIN, 120).summary(proof, Severity.WARNING, StandardRules.book().infos(),
                "out", false));
        List<Checked> checked = List.of(Checked.of(opened, report));
        all.append(CheckSarif.of(checked, EVERYTHING, StandardRules.book().infos(),
                new CheckSarif.Call("0.1.0", 1, List.of(), List.of())));
        all.append(new CheckJunit(EVERYTHING, StandardRules.book().infos(), Severity.WARNING,
                Optional.of(LocalDate.EPOCH))
                .of(checked, Map.of()));
        Compared compared = CompareRevisions.whole(StandardRules.engine(), Settings.TIMELESS, true)
                .compare(opened, revised(opened.place(), threads), Cancel.NEVER, Progress.NONE);
        all.append(new CompareText(Palette.PLAIN, 120, true).of(compared));
        all.append(CompareJson.of(compared, Severity.WARNING));
        all.append(ComparePage.of(compared));
        for (Table table : MakeSheets.of(opened.project())) {
            all.append(new String(Csv.bytes(table), StandardCharsets.UTF_8));
        }
        return all.toString();
    }

    /** A revision in which something of every class is another. */
    private Opened revised(ProjectPlace place, int threads) throws BadCall {
        List<Input> inputs = new ArrayList<>();
        for (Input each : place.inputs()) {
            try (InputStream stream = each.content().open()) {
                String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
                inputs.add(Input.of(each.name(), text.replace("280 mm", "266 mm").replace("18 ga", "20 ga")
                        .replace("bFog", "bMist").replace("year >= 1970", "year >= 1969")
                        .getBytes(StandardCharsets.UTF_8)));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return new OpenProject(reader, threads).open(new ProjectPlace("revised", place.root(), "new/", inputs),
                Cancel.NEVER, Progress.NONE);
    }

    @Test
    void neitherThreadsNorTheOrderOfFilesMatters() throws BadCall {
        String once = everything(1, false);
        assertTrue(once.length() > 100_000, "a test of much output");
        assertEquals(once, everything(4, false));
        assertEquals(once, everything(2, true));
    }

    @Test
    void neitherLocaleNorTimeZoneMatters() throws BadCall {
        String here = everything(1, false);
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
            assertEquals(here, everything(1, false));
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertEquals(here, everything(1, false));
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }
}
