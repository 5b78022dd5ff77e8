// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.cache;

import java.util.List;
import java.util.Optional;
import org.loomwright.rules.Silence;

/** Questions without an answer as bytes, with a checksum as reports have it. */
final class SilenceBytes {

    private SilenceBytes() {
    }

    static byte[] pack(List<Silence> silences) {
        Packing out = new Packing();
        out.list(silences, (to, each) -> to.text(each.question()).list(each.read(), Packing::text)
                .bit(each.everything()).text(each.print()).number(each.targets()).number(each.checks()));
        return Checksum.before(out.bytes());
    }

    /** Empty when the bytes are damaged. */
    static Optional<List<Silence>> unpack(byte[] bytes) {
        if (!Checksum.holds(bytes)) {
            return Optional.empty();
        }
        try {
            Unpacking in = new Unpacking(bytes, Checksum.LENGTH);
            List<Silence> silences = in.list(from -> new Silence(from.text(), from.list(Unpacking::text), from.bit(),
                    from.text(), from.number(), from.number()));
            return in.isEmpty() ? Optional.of(silences) : Optional.empty();
        } catch (RuntimeException e) {
            return Optional.empty();
        }
    }
}
