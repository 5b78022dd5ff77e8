// SPDX-License-Identifier: EPL-2.0

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.commonmark.renderer.text.TextContentRenderer;

/**
 * Makes the pages of the workbench's guide from the documentation of the project, and the list of them. Started by the
 * build, as a source, with two arguments: the folder {@code docs} and the folder to make the pages in.
 */
public final class MakeGuide {

    private static final String STYLE = """
            body { font-family: sans-serif; max-width: 52em; margin: 1.5em auto; padding: 0 1em; line-height: 1.45 }
            pre, code { font-family: monospace; font-size: 0.95em }
            pre { padding: 0.6em; border: 1px solid; overflow-x: auto }
            table { border-collapse: collapse } th, td { border: 1px solid; padding: 0.2em 0.5em; text-align: left }
            img { max-width: 100% } @media (prefers-color-scheme: dark) { body { background: #222; color: #ddd }
            a { color: #8cb9ff } }
            """;
    /** What is read first stands first; all else follows by name. */
    private static final List<String> FIRST = List.of("first-hour.md", "workbench.md", "language.md", "fit.md",
            "compare.md", "electric.md", "sheets.md");

    private final Parser parser = Parser.builder().extensions(List.of(TablesExtension.create())).build();
    private final HtmlRenderer html = HtmlRenderer.builder().extensions(List.of(TablesExtension.create()))
            .attributeProviderFactory(context -> this::anchor).build();
    private final TextContentRenderer plain = TextContentRenderer.builder().build();
    private final Path docs;
    private final Path guide;

    private MakeGuide(Path docs, Path guide) {
        this.docs = docs;
        this.guide = guide;
    }

    /** Makes the guide; fails when a page leads to one that does not exist. */
    public static void main(String[] arguments) throws IOException {
        new MakeGuide(Path.of(arguments[0]).toRealPath(), Path.of(arguments[1])).make();
    }

    /** A heading can be led to by its words, as forges do it. */
    private void anchor(Node node, String tag, Map<String, String> attributes) {
        if (node instanceof Heading) {
            attributes.put("id", plain.render(node).toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N} _-]", "")
                    .replace(' ', '-'));
        }
    }

    private void make() throws IOException {
        Map<String, String> titles = new TreeMap<>();
        try (Stream<Path> all = Files.walk(docs)) {
            for (Path file : all.sorted().toList()) {
                String name = docs.relativize(file).toString().replace('\\', '/');
                if (name.startsWith("examples/")) {
                    continue;
                }
                if (name.endsWith(".md")) {
                    titles.put(name, page(name, Files.readString(file)));
                } else if (name.endsWith(".png") || name.endsWith(".svg")) {
                    Path to = guide.resolve(name);
                    Files.createDirectories(to.getParent());
                    Files.copy(file, to, StandardCopyOption.REPLACE_EXISTING);
                }
            }
        }
        List<String> order = new ArrayList<>(FIRST);
        titles.keySet().stream().filter(each -> !FIRST.contains(each)).forEach(order::add);
        order.removeIf(each -> !titles.containsKey(each));
        StringBuilder list = new StringBuilder();
        for (String each : order) {
            list.append(page(each)).append('\t').append(titles.get(each)).append('\n');
        }
        write("pages.txt", list.toString());
    }

    private static String page(String name) {
        return name.substring(0, name.length() - ".md".length()) + ".html";
    }

    /** Writes one page and returns its title. */
    private String page(String name, String text) throws IOException {
        Node node = parser.parse(text);
        List<String> titles = new ArrayList<>();
        List<String> lost = new ArrayList<>();
        node.accept(new AbstractVisitor() {

            @Override
            public void visit(Heading heading) {
                if (heading.getLevel() == 1) {
                    titles.add(plain.render(heading));
                }
                visitChildren(heading);
            }

            @Override
            public void visit(Link link) {
                String to = link.getDestination();
                String file = to.contains("#") ? to.substring(0, to.indexOf('#')) : to;
                if (file.endsWith(".md") && !file.contains(":")) {
                    Path target = docs.resolve(name).resolveSibling(file).normalize();
                    if (!Files.exists(target)) {
                        lost.add(to);
                    }
                    if (target.startsWith(docs)) {
                        link.setDestination(page(file) + to.substring(file.length()));
                    }
                }
                visitChildren(link);
            }
        });
        if (!lost.isEmpty()) {
            throw new IOException(name + " leads to what does not exist: " + lost);
        }
        String title = titles.isEmpty() ? name : titles.getFirst();
        write(page(name), "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>"
                + escaped(title) + "</title><style>\n" + STYLE + "</style></head><body>\n" + html.render(node)
                + "</body></html>\n");
        return title;
    }

    private void write(String name, String text) throws IOException {
        Path file = guide.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
    }
}
