// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import java.util.Map;
import java.util.Optional;
import org.loomwright.condition.Vehicles;
import org.loomwright.harness.Limits;
import org.loomwright.harness.Platform;

/**
 * A platform with its vehicles.
 *
 * @param platform the snapshot
 * @param vehicles every vehicle that can exist
 * @param devices  the devices that the vehicle carries on its own, by name
 * @param practice how the project judges what belongs to the platform
 */
public record PlatformView(Platform platform, Vehicles vehicles, Map<String, DeviceView> devices,
        PracticeView practice) {

    /** The platform's name. */
    public String name() {
        return platform.name().text();
    }

    /** The limits that hold for what belongs to the platform. */
    public Limits limits() {
        return practice.limits();
    }

    /** The place of that name. */
    public Optional<Platform.Place> place(String name) {
        for (Platform.Place place : platform.places()) {
            if (place.name().text().equals(name)) {
                return Optional.of(place);
            }
        }
        return Optional.empty();
    }

    /** The zone in which a place lies; empty when the place or its zone is unknown. */
    public Optional<Platform.Zone> zoneOf(String place) {
        return place(place).flatMap(Platform.Place::zone).flatMap(zone -> platform.zones().stream()
                .filter(each -> each.name().text().equals(zone.text())).findFirst());
    }
}
