// SPDX-License-Identifier: EPL-2.0
package org.loomwright.harness;

import java.util.List;
import java.util.Optional;
import org.loomwright.condition.Expression;

/**
 * One box: harnesses and loose parts at one revision.
 *
 * @param name     the kit's name
 * @param title    words for people
 * @param revision its revision
 * @param platform the platform that it is for; empty when its harnesses tell
 * @param needs    for an add-on: the kit that it needs
 * @param contents what is in the box
 * @param sold     revisions that have been sold, and so are frozen
 * @param when     the vehicles that it is sold for
 * @param span     the whole element
 */
public record Kit(Name name, String title, String revision, Optional<Ref> platform, Optional<Need> needs,
        List<Content> contents, List<Sold> sold, Expression when, Span span) implements Element {

    /** The kit that an add-on needs. */
    public record Need(Ref kit, String revision, boolean orLater, Span span) {
    }

    /** A harness or part in the box. */
    public record Content(Ref item, int quantity, Expression when, Span span) {
    }

    /** A sold revision and the version-control name that holds its sources. */
    public record Sold(String revision, String at, Span span) {
    }
}
