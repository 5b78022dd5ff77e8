// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import org.loomwright.app.BadCall;
import org.loomwright.app.print.Shown;
import org.loomwright.rules.Settings;
import org.loomwright.rules.Severity;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/**
 * The options that several commands share.
 *
 * @param format    how results are printed
 * @param failOn    findings of this weight or more make the call end with 1
 * @param never     true when no finding does
 * @param shown     which findings that do not count are printed all the same
 * @param quiet     true to print no summary and no progress
 * @param settings  the day on which waivers are judged
 */
record Flags(Format format, Severity failOn, boolean never, Shown shown, boolean quiet, Settings settings) {

    private static final String FORMAT = "--format";
    private static final String FAIL_ON = "--fail-on";
    private static final String NEVER = "never";
    private static final List<Format> USUAL = List.of(Format.TEXT, Format.JSON);
    private static final List<Format> PAGES = List.of(Format.TEXT, Format.JSON, Format.HTML);
    private static final List<Format> SERVERS = List.of(Format.TEXT, Format.JSON, Format.SARIF, Format.JUNIT);
    private static final String INHERITED = "--inherited";
    private static final String ACCEPTED = "--accepted";
    private static final String ALL = "--all";
    private static final String QUIET = "--quiet";
    private static final String EVERY = "--every";
    private static final String TODAY = "--today";

    /** Describes the options of a command that judges. */
    static void judging(CommandSpec spec) {
        judging(spec, USUAL, "error, warning (default) or note");
    }

    /** Describes the options of a command that judges, and has a page for people too. */
    static void judgingOnPages(CommandSpec spec) {
        judging(spec, PAGES, "error, warning (default) or note");
    }

    private static void judging(CommandSpec spec, List<Format> formats, String weights) {
        format(spec, formats);
        spec.addOption(OptionSpec.builder(FAIL_ON).type(String.class).paramLabel("WEIGHT").description(
                "End with 1 for findings of this weight or more: " + weights + ".").build());
        quiet(spec);
    }

    /** Describes the options of a command that runs the rules. */
    static void checking(CommandSpec spec) {
        judging(spec);
        showing(spec);
    }

    /** Describes the options of the command that runs the rules for build servers too. */
    static void checkingForServers(CommandSpec spec) {
        judging(spec, SERVERS, "error, warning (default), note or never");
        showing(spec);
        spec.addOption(flag(ALL, "Also print all that does not count: inherited, accepted and known findings;"
                + " in text, every finding however many a rule has."));
    }

    private static void showing(CommandSpec spec) {
        spec.addOption(flag(INHERITED, "Also print findings about what the factory did; they never count."));
        spec.addOption(flag(ACCEPTED, "Also print findings that somebody accepted; they do not count."));
        spec.addOption(flag(EVERY, "Solve the circuits of every vehicle, however many differ: may take many minutes."));
        spec.addOption(OptionSpec.builder(TODAY).type(String.class).paramLabel("DATE").description(
                "Judge waivers as on this day, 2027-06-30 for example (default: today, UTC).").build());
    }

    static void format(CommandSpec spec) {
        format(spec, USUAL);
    }

    /** The same with pages. */
    static void formatOnPages(CommandSpec spec) {
        format(spec, PAGES);
    }

    private static void format(CommandSpec spec, List<Format> formats) {
        spec.addOption(OptionSpec.builder(FORMAT).type(String.class).paramLabel("FORMAT").description(
                "Print " + Format.words(formats).replaceFirst("text", "text (default)") + ".").build());
    }

    static void quiet(CommandSpec spec) {
        spec.addOption(flag(QUIET, "Print findings only: no summary, no progress."));
    }

    static OptionSpec flag(String name, String description) {
        return OptionSpec.builder(name).type(boolean.class).arity("0").description(description).build();
    }

    /** Describes an option that names a folder to write to. */
    static OptionSpec to(boolean required, String description) {
        return OptionSpec.builder("--to").type(String.class).required(required).paramLabel("FOLDER")
                .description(description).build();
    }

    /** Describes paths as positional arguments, at least one. */
    static PositionalParamSpec paths(String label, String description) {
        return PositionalParamSpec.builder().index("0..*").arity("1..*").required(true).type(List.class)
                .auxiliaryTypes(String.class).paramLabel(label).description(description).build();
    }

    /** Describes one positional argument. */
    static PositionalParamSpec one(int index, boolean required, String label, String description) {
        return PositionalParamSpec.builder().index(Integer.toString(index)).arity(required ? "1" : "0..1")
                .required(required).type(String.class).paramLabel(label).description(description).build();
    }

    /** Describes all further positional arguments, none if need be. */
    static PositionalParamSpec more(int index, String label, String description) {
        return PositionalParamSpec.builder().index(index + "..*").arity("0..*").type(List.class)
                .auxiliaryTypes(String.class).paramLabel(label).description(description).build();
    }

    /** Reads the options; those that the command does not have keep their defaults. */
    static Flags of(ParseResult parsed) throws BadCall {
        return of(parsed, USUAL);
    }

    /** Reads the options of {@link #judgingOnPages} and {@link #formatOnPages}. */
    static Flags ofPages(ParseResult parsed) throws BadCall {
        return of(parsed, PAGES);
    }

    /** Reads the options of {@link #checkingForServers}. */
    static Flags ofServers(ParseResult parsed) throws BadCall {
        return of(parsed, SERVERS);
    }

    private static Flags of(ParseResult parsed, List<Format> formats) throws BadCall {
        boolean servers = formats.equals(SERVERS);
        String failOn = parsed.matchedOptionValue(FAIL_ON, "warning").toLowerCase(Locale.ROOT);
        boolean all = parsed.hasMatchedOption(ALL);
        boolean never = servers && failOn.equals(NEVER);
        return new Flags(
                Format.of(FORMAT, parsed.matchedOptionValue(FORMAT, "text"), formats),
                never ? Severity.ERROR : severity(failOn, servers), never,
                new Shown(all || parsed.hasMatchedOption(INHERITED), all || parsed.hasMatchedOption(ACCEPTED), all),
                parsed.hasMatchedOption(QUIET), settings(parsed.matchedOptionValue(TODAY, ""))
                        .solving(parsed.hasMatchedOption(EVERY)));
    }

    /** True for {@code --format json}. */
    boolean json() {
        return format == Format.JSON;
    }

    /** The threshold in words. */
    String threshold() {
        return never ? NEVER : failOn.words();
    }

    private static Severity severity(String word, boolean servers) throws BadCall {
        for (Severity severity : Severity.values()) {
            if (severity.words().equals(word)) {
                return severity;
            }
        }
        throw new BadCall(FAIL_ON + " is error, warning" + (servers ? ", note or never" : " or note") + ", not '" + word
                + "'");
    }

    private static Settings settings(String day) throws BadCall {
        try {
            return Settings.on(day.isEmpty() ? LocalDate.now(ZoneOffset.UTC) : LocalDate.parse(day));
        } catch (DateTimeParseException e) {
            throw new BadCall(TODAY + " is a day like 2027-06-30, not '" + day + "'");
        }
    }
}
