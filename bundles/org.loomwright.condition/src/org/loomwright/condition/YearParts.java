// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Choices.Break;
import org.loomwright.condition.Choices.Years;

/** The model years of a platform as a row of parts, numbered from 0 in order of time; breaks cut years into parts. */
final class YearParts {
    /** One part: a whole year without breaks, or what lies between two cuts of a year. */
    private record Part(int year, Optional<String> startingBreak) {
    }

    private final List<Part> parts;

    YearParts(Choices choices) {
        this.parts = choices.years().map(years -> parts(years, choices.breaks())).orElse(List.of());
    }

    private static List<Part> parts(Years years, List<Break> breaks) {
        List<Part> parts = new ArrayList<>();
        for (int year = years.first(); year <= years.last(); year++) {
            parts.add(new Part(year, Optional.empty()));
            for (Break change : breaks) {
                if (change.year() == year) {
                    parts.add(new Part(year, Optional.of(change.name())));
                }
            }
        }
        return parts;
    }

    /** Returns how people call each part; breaks are in order of time. */
    static List<String> labels(Years years, List<Break> breaks) {
        List<Part> parts = parts(years, breaks);
        List<String> labels = new ArrayList<>();
        for (int i = 0; i < parts.size(); i++) {
            Part part = parts.get(i);
            boolean cut = i + 1 < parts.size() && parts.get(i + 1).year() == part.year();
            String early = part.year() + (cut ? " before " + parts.get(i + 1).startingBreak().orElseThrow() : "");
            labels.add(part.startingBreak().orElse(early));
        }
        return labels;
    }

    int count() {
        return parts.size();
    }

    int year(int part) {
        return parts.get(part).year();
    }

    /** Returns the break that a part starts with; nothing at the start of a year. */
    Optional<String> startingBreak(int part) {
        return parts.get(part).startingBreak();
    }

    boolean isFirstOfYear(int part) {
        return startingBreak(part).isEmpty();
    }

    boolean isLastOfYear(int part) {
        return part + 1 == count() || isFirstOfYear(part + 1);
    }

    /** Returns what names the start of a part: the year, or the break. */
    String startName(int part) {
        return startingBreak(part).orElse(Integer.toString(year(part)));
    }

    /** Returns what names the end of a part, if anything does: the year that ends, or the break whose part it is. */
    Optional<String> endName(int part) {
        return isLastOfYear(part) ? Optional.of(Integer.toString(year(part))) : startingBreak(part);
    }

    /** Returns the first part of what a year number or the name of a break means; -1 if it means nothing. */
    int start(String name) {
        for (int part = 0; part < count(); part++) {
            if (startName(part).equals(name)) {
                return part;
            }
        }
        return -1;
    }

    /** Returns the last part of what starts with a part under the name that {@link #startName} gives. */
    int end(int start) {
        int end = start;
        while (isFirstOfYear(start) && !isLastOfYear(end)) {
            end++;
        }
        return end;
    }
}
