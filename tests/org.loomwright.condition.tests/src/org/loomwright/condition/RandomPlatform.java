// SPDX-License-Identifier: EPL-2.0
package org.loomwright.condition;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Platforms and conditions made from a seed. */
final class RandomPlatform {
    private final Random random;
    private final Choices choices;

    /** Makes a platform with up to {@code options} options and some of everything else. */
    RandomPlatform(long seed, int options, int constraints) {
        this.random = new Random(seed);
        Choices.Builder builder = Choices.builder();
        if (random.nextInt(4) > 0) {
            int first = 1960 + random.nextInt(10);
            int count = 1 + random.nextInt(5);
            builder.years(first, first + count - 1);
            for (int i = random.nextInt(3); i > 0; i--) {
                builder.yearBreak("break" + i, first + random.nextInt(count), "from car " + i);
            }
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            List<String> members = new ArrayList<>();
            for (int j = 1 + random.nextInt(5); j > 0; j--) {
                members.add("g" + i + "m" + j);
            }
            builder.group("g" + i, members);
        }
        for (int i = random.nextInt(options + 1); i > 0; i--) {
            builder.option("o" + i);
        }
        builder.upgrade("u");
        Choices free = builder.build();
        for (int i = random.nextInt(constraints + 1); i > 0; i--) {
            if (random.nextBoolean()) {
                builder.never(Expression.allOf(List.of(expression(free, 1), expression(free, 1))));
            } else {
                builder.require(expression(free, 1), expression(free, 1));
            }
        }
        this.choices = builder.build();
    }

    Choices choices() {
        return choices;
    }

    /** Makes a condition with operators nested up to a depth. */
    Expression expression(int depth) {
        return expression(choices, depth);
    }

    private Expression expression(Choices among, int depth) {
        if (depth > 0 && random.nextInt(6) > 0) {
            List<Expression> operands = new ArrayList<>();
            for (int i = 1 + random.nextInt(3); i > 0; i--) {
                operands.add(expression(among, depth - 1));
            }
            return switch (random.nextInt(5)) {
                case 0 -> new Expression.Not(operands.getFirst());
                case 1, 2 -> new Expression.And(operands);
                default -> new Expression.Or(operands);
            };
        }
        Axis axis = among.axes().get(random.nextInt(among.axes().size()));
        return switch (axis.kind()) {
            case OPTION, UPGRADE -> new Expression.Choice(axis.name());
            case GROUP -> group(axis);
            case YEAR -> year(among);
        };
    }

    private Expression group(Axis axis) {
        String member = axis.members().get(random.nextInt(axis.members().size()));
        return switch (random.nextInt(4)) {
            case 0 -> new Expression.Compare(axis.name(), Relation.EQ, member);
            case 1 -> new Expression.Compare(axis.name(), Relation.NE, member);
            default -> new Expression.Choice(member);
        };
    }

    private Expression year(Choices among) {
        List<Choices.Break> breaks = among.breaks();
        if (!breaks.isEmpty() && random.nextInt(5) == 0) {
            return new Expression.Choice(breaks.get(random.nextInt(breaks.size())).name());
        }
        String one = time(among);
        String other = time(among);
        if (random.nextInt(3) == 0) {
            YearParts parts = new YearParts(among);
            boolean inOrder = parts.start(one) <= parts.end(parts.start(other));
            return new Expression.Range("year", inOrder ? one : other, inOrder ? other : one);
        }
        return new Expression.Compare("year", Relation.values()[random.nextInt(6)], one);
    }

    private String time(Choices among) {
        List<Choices.Break> breaks = among.breaks();
        if (!breaks.isEmpty() && random.nextInt(3) == 0) {
            return breaks.get(random.nextInt(breaks.size())).name();
        }
        Choices.Years years = among.years().orElseThrow();
        return Integer.toString(years.first() + random.nextInt(years.last() - years.first() + 1));
    }
}
