// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.loomwright.compare.Sort;

/**
 * A small invented project in one file, by seed, with elements of every sort that can be compared. No name is a word of
 * the language or part of another one, so that renaming is a matter of replacing text.
 */
public final class Small {

    private final Random random;
    private final StringBuilder text = new StringBuilder();
    private final List<Named> elements = new ArrayList<>();
    private final List<String> choices = new ArrayList<>();
    private int names;

    /**
     * An element with a name.
     *
     * @param sort what it is
     * @param name its name, which nothing else in the text has
     */
    public record Named(Sort sort, String name) {

        /** The text with that element under another name, here and wherever it is named. */
        public String renamed(String text) {
            return text.replaceAll("(?<![A-Za-z0-9])" + name + "(?![A-Za-z0-9])", "other" + name);
        }
    }

    private Small(long seed) {
        random = new Random(seed);
        platform();
        catalogue();
        drawing();
        harness();
        String named = random.nextBoolean() ? name(Sort.WAIVER) + ": " : "";
        line(0, "waive " + named + "orphan-wire on " + last(Sort.WIRING) + pick("", ":" + last(Sort.CONNECTOR),
                ":" + last(Sort.CIRCUIT) + '_' + last(Sort.WIRE)) + " because \"known\"");
        line(0, "practice " + name(Sort.PRACTICE) + " \"Bench\" {");
        line(1, "treat excess-slack as " + pick("note", "error") + " because \"usual\"");
        line(0, "}");
    }

    /** The project of a seed. */
    public static Small of(long seed) {
        return new Small(seed);
    }

    /** Its source text. */
    public String text() {
        return text.toString();
    }

    /** The source text of its harness alone. */
    public String harnessText() {
        int start = text.indexOf("\nharness ") + 1;
        return text.substring(start, text.indexOf("\n}\n", start) + 3);
    }

    /** Its elements in the order of the source. */
    public List<Named> elements() {
        return List.copyOf(elements);
    }

    private void line(int depth, String words) {
        text.append("    ".repeat(depth)).append(words).append('\n');
    }

    private String name(Sort sort) {
        String name = "n" + ++names + sort.word().charAt(0);
        elements.add(new Named(sort, name));
        return name;
    }

    private String pick(String... all) {
        return all[random.nextInt(all.length)];
    }

    private int from(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    private String any(Sort sort) {
        List<String> all = all(sort);
        return all.get(random.nextInt(all.size()));
    }

    private String last(Sort sort) {
        return all(sort).getLast();
    }

    private List<String> all(Sort sort) {
        return elements.stream().filter(each -> each.sort() == sort).map(Named::name).toList();
    }

    /** A condition, now and then. */
    private String when() {
        return switch (random.nextInt(6)) {
            case 0 -> " when " + choices.get(random.nextInt(choices.size()));
            case 1 -> " when year >= " + pick("1965", "1968", any(Sort.BREAK));
            default -> "";
        };
    }

    private String title() {
        return random.nextBoolean() ? " \"" + pick("Left", "Right", "Front", "Main") + from(1, 9) + '"' : "";
    }

    private void platform() {
        line(0, "platform " + name(Sort.PLATFORM) + title() + " {");
        line(1, "years 1964 .. " + from(1969, 1972));
        line(1, "break " + name(Sort.BREAK) + " in 1966");
        line(1, "break " + name(Sort.BREAK) + " in " + from(1966, 1967));
        line(1, "group " + name(Sort.GROUP) + " of " + name(Sort.MEMBER) + title() + ", " + name(Sort.MEMBER)
                + (random.nextBoolean() ? ", " + name(Sort.MEMBER) : ""));
        choices.add(last(Sort.GROUP) + " = " + all(Sort.MEMBER).get(1));
        for (int i = from(1, 2); i > 0; i--) {
            choices.add(name(Sort.OPTION));
            line(1, pick("option ", "upgrade ") + choices.getLast() + title());
        }
        line(1, "never " + name(Sort.CONSTRAINT) + ": " + choices.get(1) + " and year < " + from(1965, 1968));
        line(1, "require " + choices.get(1) + " when " + all(Sort.MEMBER).get(1) + " and year >= " + any(Sort.BREAK));
        for (int i = 0; i < 2; i++) {
            line(1, "zone " + name(Sort.ZONE) + title() + " ambient " + from(4, 9) + "0 C " + pick("wet", "dry"));
        }
        for (int i = 0; i < 3; i++) {
            line(1, "place " + name(Sort.PLACE) + title() + " in " + any(Sort.ZONE) + when());
        }
        line(1, "position " + name(Sort.POSITION) + title());
        line(1, "ground " + name(Sort.GROUND) + title());
        line(1, "ground " + name(Sort.GROUND));
        line(1, "strap " + name(Sort.STRAP) + " from " + all(Sort.GROUND).getFirst() + " to " + last(Sort.GROUND) + ' '
                + from(1, 5) + " mohm");
        for (int i = 0; i < 2; i++) {
            line(1, "device " + name(Sort.DEVICE) + title() + " at " + any(Sort.PLACE) + " on " + any(Sort.GROUND)
                    + when());
        }
        line(1, "mode " + name(Sort.MODE) + title() + " {");
        line(2, "set " + any(Sort.DEVICE) + " to " + pick("off", "on"));
        line(1, "}");
        line(0, "}");
    }

    private void catalogue() {
        line(0, "catalogue shelf {");
        line(1, "housing " + name(Sort.PART) + title() + " {");
        line(2, "cavities 1 .. " + from(4, 8));
        line(1, "}");
        line(1, "housing " + name(Sort.PART) + title() + " {");
        line(2, "cavities 1 .. " + from(9, 12));
        line(2, "gender " + pick("male", "female"));
        line(1, "}");
        line(1, "clip " + name(Sort.PART) + title() + " {");
        line(2, "mass " + from(1, 9) + " g");
        line(1, "}");
        line(0, "}");
    }

    private String housing() {
        return all(Sort.PART).get(random.nextInt(2));
    }

    private void drawing() {
        wiring("drawing ", when());
        line(0, "}");
    }

    private void harness() {
        String drawing = last(Sort.WIRING);
        wiring("harness ", "");
        line(1, "covers " + drawing);
        line(1, "serviceLoop " + from(2, 6) + "0 mm");
        String branch = last(Sort.RUN);
        line(1, "cap " + branch + " at " + any(Sort.PLACE) + " within " + from(30, 50) + "0 mm when "
                + choices.getFirst());
        line(1, "stud " + name(Sort.STUD) + " via " + branch + " on " + any(Sort.GROUND));
        line(1, "fit " + name(Sort.PLACED) + " is " + last(Sort.PART) + " at " + last(Sort.BREAKOUT));
        line(0, "}");
        line(0, "kit " + name(Sort.KIT) + title() + " revision \"" + pick("A", "B") + "\" of "
                + all(Sort.PLATFORM).getFirst() + " {");
        line(1, "contains " + last(Sort.WIRING));
        line(1, "contains " + last(Sort.PART) + " quantity " + from(1, 4) + when());
        line(0, "}");
    }

    private void wiring(String word, String when) {
        line(0, word + name(Sort.WIRING) + title() + " of " + all(Sort.PLATFORM).getFirst() + " fills "
                + last(Sort.POSITION) + when + " {");
        line(1, "datum " + all(Sort.PLACE).getFirst());
        int before = elements.size();
        String trunk = name(Sort.RUN);
        line(1, "trunk " + trunk + " {");
        line(2, "barrier " + name(Sort.BARRIER) + " at " + from(20, 60) + " mm");
        int station = 100;
        int breakouts = from(1, 2);
        for (int i = 0; i < breakouts; i++) {
            station += from(50, 300);
            line(2, "breakout " + name(Sort.BREAKOUT) + " at " + station + " mm");
        }
        line(1, "}");
        List<String> places = all(Sort.PLACE);
        for (int i = 0; i < breakouts; i++) {
            String breakout = all(Sort.BREAKOUT).get(all(Sort.BREAKOUT).size() - breakouts + i);
            line(1, "branch " + name(Sort.RUN) + " from " + breakout + " to " + places.get(1 + i) + ' '
                    + from(15, 60) * 10 + " mm" + when());
        }
        List<String> runs = own(before, Sort.RUN);
        for (int i = 1; i < runs.size(); i++) {
            line(1, "connector " + name(Sort.CONNECTOR) + title() + " on " + runs.get(i) + " is " + housing()
                    + when());
        }
        line(1, "connector " + name(Sort.CONNECTOR) + " at " + places.getFirst() + " is " + housing() + " {");
        line(2, "mates " + any(Sort.DEVICE));
        line(1, "}");
        List<String> connectors = own(before, Sort.CONNECTOR);
        for (int i = word.startsWith("d") ? 1 : from(1, 2); i > 0; i--) {
            circuit(connectors);
        }
    }

    private List<String> own(int before, Sort sort) {
        return elements.subList(before, elements.size()).stream().filter(each -> each.sort() == sort)
                .map(Named::name).toList();
    }

    private void circuit(List<String> connectors) {
        line(1, "circuit " + name(Sort.CIRCUIT) + title() + ' ' + pick("RD", "BU", "GN", "BN/WH") + when() + " {");
        List<String> others = all(Sort.CIRCUIT);
        if (all(Sort.WIRING).size() > 1) {
            line(2, "stands for " + others.getFirst() + " RD of " + all(Sort.WIRING).getFirst());
        }
        String splice = name(Sort.SPLICE);
        line(2, "splice " + splice + " at " + last(Sort.BREAKOUT));
        for (int i = from(1, 2); i > 0; i--) {
            String to = connectors.get(random.nextInt(connectors.size()));
            line(2, "wire " + name(Sort.WIRE) + ' ' + pick("18", "16", "14") + " ga " + pick("", "YE ") + "from "
                    + splice + " to " + to + ':' + from(1, 8) + when());
        }
        line(1, "}");
    }
}
