// SPDX-License-Identifier: EPL-2.0
package org.loomwright.electric.mode;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.loomwright.harness.Part;
import org.loomwright.harness.Platform;
import org.loomwright.harness.Ref;
import org.loomwright.harness.Span;
import org.loomwright.harness.link.DeviceView;
import org.loomwright.harness.link.PlatformView;

/**
 * The modes of a platform: those that it writes, with what they take over, then those of the usual ones that it does
 * not write. A usual mode puts every switch that has a state of its word, {@code run} or {@code crank}, into it, and
 * leaves the others at rest.
 */
public final class Modes {

    private static final String ENGINE = "engine";
    private static final String BATTERY_FLAT = "flat";

    private record Usual(String name, String title, Engine engine, boolean flat, List<String> words) {
    }

    private static final List<Usual> USUAL = List.of(
            new Usual("keyOff", "Key off", Engine.STOPPED, false, List.of()),
            new Usual("keyOn", "Key on, engine stopped", Engine.STOPPED, false, List.of("run", "on", "ignition")),
            new Usual("crank", "Cranking", Engine.CRANK, false, List.of("crank", "start")),
            new Usual("idle", "Idling", Engine.IDLE, false, List.of("run", "on", "ignition")),
            new Usual("day", "Driving by day", Engine.CRUISE, false, List.of("run", "on", "ignition")),
            new Usual("flatBattery", "Flat battery on full charge", Engine.CRUISE, true,
                    List.of("run", "on", "ignition")),
            new Usual("keyOffTurning", "Key turned off, engine still turning", Engine.TURNING, false, List.of()));

    private Modes() {
    }

    /** Returns the modes of a platform. What a ring of modes takes over is left out; the text says so elsewhere. */
    public static List<Mode> of(PlatformView platform) {
        Map<String, Platform.Mode> written = new LinkedHashMap<>();
        platform.platform().modes().forEach(each -> written.putIfAbsent(each.name().text(), each));
        List<Mode> modes = new ArrayList<>();
        written.values().forEach(each -> modes.add(resolve(each, written)));
        for (Usual usual : USUAL) {
            if (!written.containsKey(usual.name())) {
                modes.add(usual(usual, platform));
            }
        }
        return List.copyOf(modes);
    }

    private static Mode resolve(Platform.Mode mode, Map<String, Platform.Mode> written) {
        List<Platform.Mode> chain = new ArrayList<>();
        Set<String> seen = new LinkedHashSet<>();
        for (Platform.Mode at = mode; at != null && seen.add(at.name().text());) {
            chain.addFirst(at);
            at = at.parent().map(Ref::text).map(written::get).orElse(null);
        }
        Engine engine = Engine.STOPPED;
        boolean flat = false;
        Map<String, String> states = new LinkedHashMap<>();
        for (Platform.Mode each : chain) {
            for (Platform.Setting setting : each.settings()) {
                Optional<Engine> said = Engine.of(setting.state());
                if (setting.subject().text().equals(ENGINE) && said.isPresent()) {
                    engine = said.get();
                } else {
                    states.put(setting.subject().text(), setting.state());
                }
            }
        }
        flat = states.containsValue(BATTERY_FLAT);
        return new Mode(mode.name().text(), mode.title(), engine, flat, states, true, mode.span());
    }

    private static Mode usual(Usual usual, PlatformView platform) {
        Map<String, String> states = new LinkedHashMap<>();
        for (DeviceView device : platform.devices().values()) {
            device.parts().stream().map(each -> each.value()).filter(part -> part.kind() == Part.Kind.SWITCH)
                    .flatMap(part -> part.states().stream()).map(state -> state.text())
                    .filter(usual.words()::contains).findFirst()
                    .filter(state -> isKey(device, state)).ifPresent(state -> states.put(device.name(), state));
        }
        return new Mode(usual.name(), usual.title(), usual.engine(), usual.flat(), states, false, Span.NONE);
    }

    /** The states {@code on} and {@code start} of any switch are not those of the key; {@code run} is. */
    private static boolean isKey(DeviceView device, String state) {
        boolean plain = state.equals("on") || state.equals("start");
        String words = (device.name() + " " + device.device().title()).toLowerCase(java.util.Locale.ROOT);
        return !plain || words.contains("ignition") || words.contains("key");
    }
}
