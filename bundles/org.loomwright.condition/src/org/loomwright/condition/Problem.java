// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.Objects;
import java.util.Optional;

/**
 * What is wrong with a condition or a description of choices that a person wrote.
 *
 * @param kind what kind of mistake it is
 * @param message one sentence in trade words, without a full stop
 * @param subject the name or member at fault
 * @param offset where the node at fault starts in its source, or {@link Expression#NOWHERE}
 * @param length how long it is there, or {@link Expression#NOWHERE}
 * @param candidate what was probably meant instead of the subject
 */
public record Problem(
        Kind kind, String message, String subject, int offset, int length, Optional<String> candidate) {
    /** The mistakes. */
    public enum Kind {
        /** A choice that the platform does not have. */
        UNKNOWN_CHOICE,
        /** A comparison or range of something that is no group. */
        UNKNOWN_GROUP,
        /** A member that the group does not have. */
        UNKNOWN_MEMBER,
        /** A comparison by order, or a range, of a group without order. */
        NOT_ORDERED,
        /** A range whose end lies before its start. */
        EMPTY_RANGE,
        /** A year outside the years of the platform. */
        OUTSIDE_YEARS,
        /** A condition nested deeper, or longer, than any that a person writes. */
        TOO_LARGE,
        /** A name that stands for two things. */
        DUPLICATE_NAME,
        /** A group without members. */
        EMPTY_GROUP,
        /** Years that run backwards, or far too many. */
        IMPOSSIBLE_YEARS,
        /** A break in a year that the platform does not have. */
        BREAK_OUTSIDE_YEARS
    }

    public Problem {
        Objects.requireNonNull(kind);
        Objects.requireNonNull(message);
        Objects.requireNonNull(subject);
        Objects.requireNonNull(candidate);
    }
}
