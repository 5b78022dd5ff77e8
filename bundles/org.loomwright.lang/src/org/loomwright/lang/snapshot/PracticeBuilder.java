// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang.snapshot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.harness.Limit;
import org.loomwright.harness.Name;
import org.loomwright.harness.Practice;
import org.loomwright.harness.Practice.Setting;
import org.loomwright.harness.Practice.Treatment;
import org.loomwright.harness.Practice.Weight;
import org.loomwright.harness.TextEdit;
import org.loomwright.model.loom.OwnLimit;
import org.loomwright.quantity.Quantity;
import org.loomwright.quantity.Spelling;

/** Builds practices. Which rules there are is not known here. */
final class PracticeBuilder extends Builder {

    PracticeBuilder(FileText file, Quantities quantities) {
        super(file, quantities);
    }

    Practice build(org.loomwright.model.loom.Practice source) {
        Written written = of(source);
        List<Treatment> treatments = new ArrayList<>();
        List<Setting> settings = new ArrayList<>();
        source.getFacts().forEach(fact -> {
            switch (fact) {
                case org.loomwright.model.loom.Treatment each -> treatment(each, treatments);
                case OwnLimit each -> setting(each, settings);
                default -> { }
            }
        });
        return new Practice(written.name("name"), text(source.getTitle()), written.ref("platform"), treatments,
                settings, written.span());
    }

    /** A line that is damaged, or that gives no reason, treats nothing. */
    private void treatment(org.loomwright.model.loom.Treatment source, List<Treatment> into) {
        Written line = of(source);
        Name rule = line.name("rule");
        if (!rule.text().isEmpty() && line.has("weight") && given(source.getReason(), line, "reason")) {
            into.add(new Treatment(rule, Weight.valueOf(source.getWeight().name()),
                    source.getReason(), line.span()));
        }
    }

    private void setting(OwnLimit source, List<Setting> into) {
        Written line = of(source);
        Name word = line.name("limit");
        Optional<Limit> limit = Limit.of(word.text());
        if (word.text().isEmpty()) {
            return;
        }
        if (limit.isEmpty()) {
            unknown(word);
            return;
        }
        Optional<Quantity> value = quantities.read(source.getValue(), kind(limit.get()));
        if (value.isEmpty()) {
            return;
        }
        if (!limit.get().allows(value.get())) {
            file.problems().add("number-absurd", line.span("value"), word + " lies between " + limit.get().least()
                    + " and " + limit.get().most(), "");
        } else if (given(source.getBasis(), line, "basis")) {
            into.add(new Setting(limit.get(), value.get(), source.getBasis(), line.span()));
        }
    }

    private boolean given(String words, Written line, String feature) {
        if (words != null && words.isBlank()) {
            file.problems().add("reason-missing", line.span(feature), feature.equals("reason")
                    ? "nothing says why the rule is treated otherwise" : "nothing says where the figure comes from",
                    "say it in a few words: it stands in every report");
        }
        return words != null && !words.isBlank();
    }

    private void unknown(Name word) {
        Optional<String> near = Spelling.nearest(word.text(), Limit.words());
        TextEdit[] edits = near.map(text -> new TextEdit[] {new TextEdit(word.span(), text)})
                .orElse(new TextEdit[0]);
        file.problems().add("limit-unknown", word.span(), "there is no limit named \"" + word + "\"",
                near.map(text -> "did you mean \"" + text + "\"?")
                        .orElse("docs/language/practice.md lists those that there are"), edits);
    }

    private static Kind kind(Limit limit) {
        return switch (limit.dimension()) {
            case RATIO -> Kind.SHARE;
            case RESISTANCE -> Kind.RESISTANCE;
            case VOLTAGE -> Kind.VOLTAGE;
            case CURRENT -> Kind.CURRENT;
            default -> Kind.LENGTH;
        };
    }
}
