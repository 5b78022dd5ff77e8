// SPDX-License-Identifier: EPL-2.0
package org.loomwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;

/** Default length tolerances against the published table; the source stands in the data file. */
@Tag("outside")
class CutToleranceOutsideTest {
    @TestFactory
    Stream<DynamicTest> bandsOfTheTable() throws IOException {
        return Table.rows("a620.csv").stream().map(row -> dynamicTest(row[0] + " " + row[1] + " " + row[2], () -> {
            CutTolerance table = row[0].equals("metric") ? CutTolerance.a620Metric() : CutTolerance.a620Inch();
            Quantity length = new Quantity(row[1], Unit.ofSymbol(row[2]).orElseThrow());
            Tolerance tolerance = table.of(Length.of(length));
            assertEquals(Length.of(new Quantity(row[3], Unit.MM)), tolerance.minus());
            assertEquals(Length.of(new Quantity(row[4], Unit.MM)), tolerance.plus());
        }));
    }
}
