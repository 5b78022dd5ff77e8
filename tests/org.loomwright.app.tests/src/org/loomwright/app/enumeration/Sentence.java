// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.enumeration;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Reads the words in which a finding names its vehicles, by a reader of its own. */
final class Sentence {

    private static final Pattern TOKEN = Pattern.compile("\\.\\.|[<>!]?=|[<>()]|[A-Za-z0-9]+");

    private final List<String> tokens;
    private int next;

    private Sentence(String words) {
        tokens = TOKEN.matcher(words).results().map(MatchResult::group).toList();
    }

    /** What the words mean; {@code every vehicle} is every vehicle. */
    static Predicate<Map<String, String>> of(String words) {
        if (words.equals("every vehicle")) {
            return vehicle -> true;
        }
        Sentence sentence = new Sentence(words);
        Predicate<Map<String, String>> meaning = sentence.either();
        if (sentence.next != sentence.tokens.size()) {
            throw new IllegalArgumentException("not a sentence: " + words);
        }
        return meaning;
    }

    private boolean at(String token) {
        boolean there = next < tokens.size() && tokens.get(next).equals(token);
        next += there ? 1 : 0;
        return there;
    }

    private Predicate<Map<String, String>> either() {
        Predicate<Map<String, String>> meaning = both();
        while (at("or")) {
            meaning = meaning.or(both());
        }
        return meaning;
    }

    private Predicate<Map<String, String>> both() {
        Predicate<Map<String, String>> meaning = single();
        while (at("and")) {
            meaning = meaning.and(single());
        }
        return meaning;
    }

    private Predicate<Map<String, String>> single() {
        if (at("not")) {
            return single().negate();
        }
        if (at("(")) {
            Predicate<Map<String, String>> meaning = either();
            if (!at(")")) {
                throw new IllegalArgumentException("no end of parentheses in " + tokens);
            }
            return meaning;
        }
        String name = tokens.get(next++);
        String sign = next < tokens.size() ? tokens.get(next) : "";
        if (name.equals("year") && sign.matches("\\d+")) {
            int from = Integer.parseInt(sign);
            int upTo = Integer.parseInt(tokens.get(next + 2));
            next += 3;
            return vehicle -> year(vehicle) >= from && year(vehicle) <= upTo;
        }
        if (!sign.matches("[<>!]?=|[<>]")) {
            return vehicle -> vehicle.containsValue(name);
        }
        String member = tokens.get(next + 1);
        next += 2;
        return switch (sign) {
            case "=" -> vehicle -> vehicle.get(name).equals(member);
            case "!=" -> vehicle -> !vehicle.get(name).equals(member);
            case "<" -> vehicle -> year(vehicle) < Integer.parseInt(member);
            case "<=" -> vehicle -> year(vehicle) <= Integer.parseInt(member);
            case ">" -> vehicle -> year(vehicle) > Integer.parseInt(member);
            default -> vehicle -> year(vehicle) >= Integer.parseInt(member);
        };
    }

    private static int year(Map<String, String> vehicle) {
        return Integer.parseInt(vehicle.get("year"));
    }
}
