// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.loomwright.condition.Condition;
import org.loomwright.harness.Fact;
import org.loomwright.harness.Source;
import org.loomwright.harness.Wiring;
import org.loomwright.harness.link.PlatformView;
import org.loomwright.harness.link.Project;
import org.loomwright.harness.link.WiringView;

/**
 * Hashes of what questions about a project rest on, which tell in another run whether it is the same. What a drawing or
 * harness looks at outside of its own file is in its print: platforms, catalogues, kits and practices, the names of all
 * others, the connectors of what it mates with, and the vehicles of what it covers. Safe for use by several threads.
 */
final class Prints {

    private final Project project;
    private final Map<String, String> files = new HashMap<>();
    private final String common;
    private final String whole;
    private final Map<String, String> wirings = new ConcurrentHashMap<>();

    /**
     * @param settings what else answers rest on; the day is none of it
     */
    Prints(Project project, Settings settings) {
        this.project = project;
        List<String> shared = new ArrayList<>();
        List<String> all = new ArrayList<>();
        for (Source source : project.sources()) {
            String print = hash(List.of(source.file(), source.text()));
            files.put(source.file(), print);
            all.add(print);
            if (!source.problems().isEmpty() || !source.elements().stream().allMatch(Wiring.class::isInstance)) {
                shared.add(print);
            }
        }
        shared.addAll(Memory.names(project));
        shared.add("");
        shared.addAll(project.parts().keySet());
        shared.add(settings.every() ? "every vehicle solved" : "");
        common = hash(shared);
        all.add(common);
        whole = hash(all);
    }

    /** Returns what stands for all that every question rests on: what is in no drawing or harness. */
    String common() {
        return common;
    }

    /** Returns what stands for all that the answer to a question rests on. */
    String of(String question, List<Object> inputs, List<String> read, boolean everything) {
        List<String> prints = new ArrayList<>(List.of(question, everything ? whole : common));
        inputs.forEach(input -> prints.add(of(input)));
        for (String name : read) {
            prints.add(name);
            prints.add(project.wiring(name).map(this::of).orElse(""));
        }
        return hash(prints);
    }

    private String of(Object input) {
        return switch (input) {
            case WiringView view -> of(view);
            case PlatformView platform -> platform.name();
            case Condition condition -> condition.canonical();
            case Project ignored -> whole;
            default -> throw new IllegalArgumentException("nothing stands for a " + input.getClass().getName());
        };
    }

    private String of(WiringView view) {
        return project.wirings().get(view.name()) == view
                ? wirings.computeIfAbsent(view.name(), name -> fresh(view)) : fresh(view);
    }

    private String fresh(WiringView view) {
        List<String> prints = new ArrayList<>();
        prints.add(view.name());
        prints.add(files.getOrDefault(view.wiring().span().file(), ""));
        view.covers().forEach(name -> prints.add(project.wirings().get(name).when().canonical()));
        view.wiring().connectors().stream().flatMap(connector -> connector.mates().stream()).map(Fact::value)
                .map(mate -> project.wiring(mate.owner())).forEach(owner -> owner.ifPresent(other ->
                        other.wiring().connectors().forEach(each -> prints.add(each.name().text()))));
        return hash(prints);
    }

    /** The length goes first, so that no two lists run together. */
    private static String hash(List<String> texts) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String text : texts) {
                byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
                digest.update((bytes.length + ":").getBytes(StandardCharsets.US_ASCII));
                digest.update(bytes);
            }
            return HexFormat.of().formatHex(digest.digest(), 0, 16);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
