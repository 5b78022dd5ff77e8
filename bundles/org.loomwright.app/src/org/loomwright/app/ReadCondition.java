// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.loomwright.condition.Condition;
import org.loomwright.condition.Resolution;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Kit;
import org.loomwright.harness.Source;
import org.loomwright.lang.SourceReader;

/** Reads a condition that stands in a call, in the words of the language. */
final class ReadCondition {

    private static final String BEFORE = "kit asked \"asked\" revision \"A\" of asked when ";
    /** Choices with nothing between them: {@code 1967 coupe not heater}. */
    private static final Pattern CHOICES = Pattern.compile("\\s*(not\\s+)?\\w+((\\s*,\\s*|\\s+)(not\\s+)?\\w+)*\\s*");
    /** In a call {@code year 1970} may stand for {@code year = 1970}. */
    private static final Pattern YEAR = Pattern.compile("\\byear +([0-9]+)\\b(?! *\\.)");

    private ReadCondition() {
    }

    /** Bare choices, as {@code electric --vehicle} takes them, joined to a condition; any other text as it is. */
    private static String joined(String words) {
        List<String> parts = List.of(words.strip().split("[\\s,]+"));
        boolean bare = CHOICES.matcher(words).matches() && parts.stream().noneMatch(each -> each.equals("and")
                || each.equals("or") || each.equals("year"));
        if (!bare) {
            return words;
        }
        StringBuilder condition = new StringBuilder();
        for (int i = 0; i < parts.size(); i++) {
            condition.append(i == 0 ? "" : parts.get(i - 1).equals("not") ? " " : " and ")
                    .append(parts.get(i).matches("\\d+") ? "year = " + parts.get(i) : parts.get(i));
        }
        return condition.toString();
    }

    /**
     * The vehicles that some words mean.
     *
     * @param what where the words come from, for complaints: {@code --for}
     * @throws BadCall if they are no condition, or name what the platform does not have
     */
    static Condition of(String what, String words, Vehicles vehicles, SourceReader reader) throws BadCall {
        if (words.isBlank() || words.chars().anyMatch(c -> c < ' ' || "{}\"/".indexOf(c) >= 0)) {
            throw new BadCall(what + " is a condition such as 'year >= 1970 and not halogen', not '" + words + "'");
        }
        String text = BEFORE + YEAR.matcher(joined(words)).replaceAll("year = $1") + " {\n}\n";
        Source source = reader.read(what, text.getBytes(StandardCharsets.UTF_8));
        if (!source.problems().isEmpty() || source.elements().size() != 1
                || !(source.elements().getFirst() instanceof Kit kit)) {
            throw new BadCall(what + " '" + words + "' cannot be read as a condition; write it as after 'when' in a"
                    + " source: year >= 1970 and not halogen");
        }
        Resolution resolution = vehicles.resolve(kit.when());
        if (!resolution.problems().isEmpty()) {
            var problem = resolution.problems().getFirst();
            throw new BadCall(what + ": " + problem.message()
                    + problem.candidate().map(near -> "; did you mean '" + near + "'?").orElse(""));
        }
        return resolution.condition();
    }
}
