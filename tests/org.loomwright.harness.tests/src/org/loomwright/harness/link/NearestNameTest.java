// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness.link;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NearestNameTest {

    private static final List<String> NAMES = List.of("saloon", "coupe", "estate", "headlampLeft", "headlampRight");

    @Test
    void aSlipOfTheHandIsForgiven() {
        assertEquals(Optional.of("coupe"), NearestName.of("coup", NAMES));
        assertEquals(Optional.of("saloon"), NearestName.of("slaoon", NAMES));
        assertEquals(Optional.of("headlampLeft"), NearestName.of("headlampleft", NAMES));
    }

    @Test
    void aStrangerIsNot() {
        assertEquals(Optional.empty(), NearestName.of("fan", NAMES));
    }

    @Test
    void ofTwoEquallyNearTheFirstInTheAlphabetWinsWhateverTheOrder() {
        assertEquals(Optional.of("J1"), NearestName.of("J3", List.of("J2", "J1")));
        assertEquals(Optional.of("J1"), NearestName.of("J3", List.of("J1", "J2")));
    }
}
