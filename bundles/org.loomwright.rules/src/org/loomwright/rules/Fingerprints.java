// SPDX-License-Identifier: EPL-2.0
package org.loomwright.rules;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Names for findings that stay when lines move: a hash of what the finding is about, without any place. */
final class Fingerprints {

    private static final int BYTES = 16;
    private static final MessageDigest SHA_256 = sha256();
    private static final Comparator<Finding> ORDER = Comparator
            .comparing((Finding finding) -> finding.place().span())
            .thenComparing(Finding::rule)
            .thenComparing(Finding::element)
            .thenComparing(Finding::sentence)
            .thenComparing(finding -> String.join("\n", finding.derivation()))
            .thenComparing(Finding::fingerprint)
            .thenComparing(finding -> finding.affected().map(Finding.Affected::words).orElse(""));

    private Fingerprints() {
    }

    /** Looks up the hash, which takes a while once; whoever calls this early saves it later. */
    static void prepare() {
        SHA_256.reset();
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The first 16 bytes of the SHA-256 of some words, in hexadecimal digits. */
    static String of(String... words) {
        try {
            MessageDigest digest = (MessageDigest) SHA_256.clone();
            for (String word : words) {
                digest.update(word.getBytes(StandardCharsets.UTF_8));
                digest.update((byte) 0);
            }
            return HexFormat.of().formatHex(digest.digest(), 0, BYTES);
        } catch (CloneNotSupportedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The findings in order, each with a fingerprint of its own: a second one of a kind is numbered. */
    static List<Finding> distinct(List<Finding> findings) {
        Map<String, Integer> seen = new HashMap<>();
        List<Finding> distinct = new ArrayList<>(findings.size());
        for (Finding finding : findings.stream().sorted(ORDER).toList()) {
            int before = seen.merge(finding.fingerprint(), 1, Integer::sum);
            distinct.add(before == 1 ? finding : renamed(finding, Integer.toString(before)));
        }
        return distinct;
    }

    /** The same finding with a fingerprint of its own, made of the one that it has and some words. */
    static Finding renamed(Finding finding, String... words) {
        String fingerprint = of(Stream.concat(Stream.of(finding.fingerprint()), Stream.of(words))
                .toArray(String[]::new));
        return new Finding(finding.rule(), finding.severity(), finding.inherited(), finding.element(),
                finding.subject(), finding.sentence(), finding.derivation(), finding.basis(), finding.affected(),
                finding.place(), finding.related(), finding.advice(), finding.fixes(), finding.acceptance(),
                fingerprint);
    }
}
