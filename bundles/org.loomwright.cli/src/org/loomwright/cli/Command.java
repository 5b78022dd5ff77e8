// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import org.loomwright.app.BadCall;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/**
 * One command of the command line. Its arguments are described by code, since reading annotations slows every start.
 */
interface Command {

    /** The word that calls it. */
    String name();

    /** One line for the list of commands. */
    String summary();

    /** Whether it is certain, with these arguments, to read what sources say and not only their text. */
    default boolean reads(List<String> arguments) {
        return true;
    }

    /** Adds the arguments and the help of the command. */
    void describe(CommandSpec spec);

    /**
     * Does it.
     *
     * @param arguments what it was called with
     * @param language  reads sources
     * @param door      where results go
     * @return an {@link Exit} code
     * @throws BadCall if the call cannot be carried out
     */
    int run(ParseResult arguments, Language language, Door door) throws BadCall;
}
