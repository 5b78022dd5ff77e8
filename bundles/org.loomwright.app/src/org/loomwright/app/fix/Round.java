// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.fix;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.harness.TextEdit;
import org.loomwright.lang.SourceReader;
import org.loomwright.rules.Finding;
import org.loomwright.rules.Report;

/**
 * One round of fixes: of those that do not touch each other the first ones, in the order of the findings. After it,
 * each file can be read at least as well as before; a fix that would make it worse is refused for good.
 */
final class Round {

    private record Chosen(Finding finding, Finding.Fix fix) {

        String key() {
            return finding.fingerprint() + fix;
        }
    }

    private final SourceReader reader;
    private final Map<String, Text> texts;
    private final Set<String> refused;

    /**
     * @param texts   the texts that may be changed, by file
     * @param refused fixes that were refused; this round adds to it
     */
    Round(SourceReader reader, Map<String, Text> texts, Set<String> refused) {
        this.reader = reader;
        this.texts = texts;
        this.refused = refused;
    }

    /** The one fix of a finding that can be made without asking anybody; empty when there is none or a choice. */
    static Optional<Finding.Fix> certain(Finding finding) {
        List<Finding.Fix> certain = finding.fixes().stream().filter(Finding.Fix::certain).toList();
        return finding.counts() && certain.size() == 1 ? Optional.of(certain.getFirst()) : Optional.empty();
    }

    /** Makes the fixes: the texts that they change, by file. What was made is added to a list. */
    Map<String, Text> make(Report report, List<Change> made) {
        List<Chosen> chosen = chosen(report);
        Map<String, Text> after = after(chosen);
        if (isWorse(after)) {
            List<Chosen> kept = new ArrayList<>();
            for (Chosen each : chosen) {
                kept.add(each);
                if (isWorse(after(kept))) {
                    kept.removeLast();
                    refused.add(each.key());
                }
            }
            chosen = kept;
            after = after(kept);
        }
        for (Chosen each : chosen) {
            String file = each.fix().edits().getFirst().span().file();
            made.add(Change.of(each.finding(), each.fix(), texts.get(file).text()));
        }
        return after;
    }

    private List<Chosen> chosen(Report report) {
        Taken taken = new Taken();
        List<Chosen> chosen = new ArrayList<>();
        for (Finding finding : report.findings()) {
            certain(finding).map(fix -> new Chosen(finding, fix))
                    .filter(each -> isPossible(each.fix()) && !refused.contains(each.key()))
                    .filter(each -> taken.take(each.fix().edits())).ifPresent(chosen::add);
        }
        return chosen;
    }

    private boolean isPossible(Finding.Fix fix) {
        return !fix.edits().isEmpty() && fix.edits().stream().allMatch(edit -> texts.containsKey(edit.span().file())
                && edit.span().end() <= texts.get(edit.span().file()).text().length()) && new Taken().take(fix.edits());
    }

    private Map<String, Text> after(List<Chosen> chosen) {
        Map<String, List<TextEdit>> edits = new LinkedHashMap<>();
        chosen.forEach(each -> each.fix().edits().forEach(edit -> edits
                .computeIfAbsent(edit.span().file(), file -> new ArrayList<>()).add(edit)));
        Map<String, Text> after = new HashMap<>();
        edits.forEach((file, list) -> after.put(file, texts.get(file).after(list)));
        return after;
    }

    private boolean isWorse(Map<String, Text> after) {
        return after.entrySet().stream().anyMatch(each -> problems(each.getKey(), each.getValue())
                > problems(each.getKey(), texts.get(each.getKey())));
    }

    private int problems(String file, Text text) {
        return reader.read(file, text.encoded()).problems().size();
    }
}
