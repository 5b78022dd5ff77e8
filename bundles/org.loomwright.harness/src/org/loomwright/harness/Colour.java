// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

/**
 * The colour of a wire: base and, where there is one, tracer. Codes are those of IEC 60757 and what the catalogue adds.
 * IEC 60757 joins two codes in an order of its own; here the base always comes first, so the two are separate fields.
 *
 * @param base   code of the base colour
 * @param tracer code of the tracer, empty when there is none
 */
public record Colour(String base, String tracer) {

    @Override
    public String toString() {
        return tracer.isEmpty() ? base : base + "/" + tracer;
    }
}
