// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.loomwright.app.BadCall;
import org.loomwright.app.Checked;
import org.loomwright.app.known.Baseline;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/**
 * The options about known findings.
 *
 * @param baseline what is known, if the call names a file to read
 * @param write    the file to write, if the call names one
 */
record BaselineFlags(Optional<Baseline> baseline, Optional<String> write) {

    private static final String READ = "--baseline";
    private static final String WRITE = "--write-baseline";

    /** Describes the options. */
    static void describe(CommandSpec spec) {
        spec.addOption(OptionSpec.builder(READ).type(String.class).paramLabel("FILE").description(
                "Set aside the findings that this file lists: they are known and do not count.").build());
        spec.addOption(OptionSpec.builder(WRITE).type(String.class).paramLabel("FILE").description(
                "Write the findings that count to this file, as known from now on.").build());
    }

    /**
     * Reads the options, and the file.
     *
     * @param base the folder that relative paths start from
     * @throws BadCall if the file cannot be read
     */
    static BaselineFlags of(ParseResult parsed, Path base) throws BadCall {
        Optional<Baseline> baseline = parsed.hasMatchedOption(READ)
                ? Optional.of(Baseline.read(base, parsed.matchedOptionValue(READ, ""))) : Optional.empty();
        return new BaselineFlags(baseline, Optional.ofNullable(parsed.matchedOptionValue(WRITE, null)));
    }

    /** Whether the call names a file to read or to write. */
    boolean isAsked() {
        return baseline.isPresent() || write.isPresent();
    }

    /**
     * Writes the file, and sets aside what is known.
     *
     * @param checked projects; those that lose findings are replaced
     * @return what became of the baseline that was read; empty when there is none, or a new one takes its place
     * @throws BadCall if the file cannot be written
     */
    Optional<Baseline.Compared> apply(List<Checked> checked, Door door) throws BadCall {
        if (write.isPresent()) {
            Baseline fresh = Baseline.of(write.get(), checked);
            fresh.write(door.folder());
            checked.replaceAll(each -> each.settingAside(fresh.fingerprints()));
            int count = fresh.entries().size();
            door.err().println("wrote " + count + (count == 1 ? " known finding" : " known findings") + " to "
                    + write.get());
            return Optional.empty();
        }
        if (baseline.isEmpty()) {
            return Optional.empty();
        }
        checked.replaceAll(each -> each.settingAside(baseline.get().fingerprints()));
        return Optional.of(baseline.get().compare(checked));
    }
}
