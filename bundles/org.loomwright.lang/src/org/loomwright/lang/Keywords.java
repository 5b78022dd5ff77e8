// SPDX-License-Identifier: EPL-2.0
package org.loomwright.lang;

import java.util.Set;

/**
 * The words of the language, for those who colour a text without reading it. A test holds them against the grammar;
 * asking the grammar itself takes longer than an editor may take to open.
 */
public final class Keywords {

    /** What a block outside of all others begins with. */
    public static final Set<String> BLOCKS = Set.of("catalogue", "drawing", "harness", "kit", "platform",
            "practice", "waive");

    /** All others. */
    public static final Set<String> WORDS = Set.of(
            "after", "ambient", "and", "as", "assembly", "at", "barrier", "basis", "because", "before", "bend",
            "bore", "branch", "branches", "break", "breaker", "breaking", "breakout", "breakouts", "by", "cable",
            "called", "cap", "cavities", "circuit", "clip", "colour", "connector", "contains", "copper", "covering",
            "covers", "current", "cuttingGrid", "datum", "device", "diameter", "doublingBackAtMost", "dropOut", "dry",
            "error", "excess", "excessAtMost", "extends", "face", "factory", "family", "figuresFrom", "fills", "fit",
            "fits", "flasher", "for", "from", "fuse", "fusibleLink", "gender", "ground", "group", "height", "housing",
            "in", "is", "issue", "joins", "keying", "lamp", "later", "legend", "length", "like", "limit", "load",
            "made", "map", "mass", "mates", "measured", "minimise", "mode", "most", "motor", "movement", "needs",
            "negative", "never", "none", "not", "note", "of", "on", "opening", "option", "or", "path", "pinned",
            "pins", "place", "plug", "polarity", "position", "positive", "power", "protects", "pull", "pullIn",
            "quantity", "radius", "rating", "relay", "require", "resistance", "resistorCable", "returns", "revision",
            "sample", "scaled", "seal", "serviceLoop", "set", "sheet", "shortTime", "silent", "size", "slack", "sold",
            "source", "spacingAtLeast", "splice", "spliceMethod", "stall", "stands", "start", "states", "strap",
            "strip", "stud", "supply", "switch", "takes", "temperature", "terminal", "thickness", "through", "tip",
            "to", "tolerance", "treat", "trunk", "type", "unknown", "until", "upgrade", "via", "voltage", "warning",
            "wet", "when", "while", "wire", "within", "years", "zone");

    private Keywords() {
    }
}
