// SPDX-License-Identifier: EPL-2.0
package org.loomwright.cli;

import java.util.List;
import org.loomwright.app.BadCall;
import org.loomwright.app.BrowseStock;
import org.loomwright.app.print.StockJson;
import org.loomwright.app.print.StockText;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code stock}: what the catalogue holds that is shipped. */
final class StockCommand implements Command {

    private static final String COPY = "--copy";

    @Override
    public String name() {
        return "stock";
    }

    @Override
    public String summary() {
        return "List the parts that every project may use, with their figures and sources.";
    }

    @Override
    public void describe(CommandSpec spec) {
        spec.addPositional(PositionalParamSpec.builder().index("0..*").arity("0..*").type(List.class)
                .auxiliaryTypes(String.class).paramLabel("WORD").description(
                        "Words that a part's name, kind, title or family holds; without words a short list of all.")
                .build());
        spec.addOption(OptionSpec.builder(COPY).type(String.class).paramLabel("NAME").description(
                "Print the part of that name as it stands in the stock, to be put into a catalogue.").build());
        Flags.format(spec);
    }

    @Override
    public int run(ParseResult arguments, Language language, Door door) throws BadCall {
        Flags flags = Flags.of(arguments);
        List<String> words = arguments.matchedPositionalValue(0, List.of());
        BrowseStock stock = new BrowseStock(language.reader());
        String copied = arguments.matchedOptionValue(COPY, "");
        if (arguments.hasMatchedOption(COPY)) {
            if (!words.isEmpty() || flags.json()) {
                throw new BadCall(COPY + " stands alone");
            }
            door.out().print(stock.source(copied).orElseThrow(() -> new BadCall("no part '" + copied + "' in the stock"
                    + stock.nearest(copied).map(near -> "; did you mean " + near + "?").orElse(""))));
            return Exit.FINE;
        }
        List<BrowseStock.Bay> bays = stock.find(words);
        if (bays.isEmpty()) {
            throw new BadCall("no part of the stock holds '" + String.join(" ", words)
                    + "'; 'loomwright stock' lists all");
        }
        StockText text = new StockText(Desk.palette(door));
        door.out().print(flags.json() ? StockJson.of(bays) : words.isEmpty() ? text.list(bays)
                + "\n'loomwright stock WORD' shows figures and sources.\n" : text.details(bays));
        return Exit.FINE;
    }
}
