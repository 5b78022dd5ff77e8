// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** General programs that read the sheets back: those of poppler, and python with openpyxl. */
public final class Outside {

    private static final Pattern WORD = Pattern.compile(
            "<word xMin=\"([0-9.-]+)\" yMin=\"([0-9.-]+)\" xMax=\"([0-9.-]+)\" yMax=\"([0-9.-]+)\">([^<]*)</word>");

    private Outside() {
    }

    /** A word on a page; lengths in points from the top left corner. */
    public record Word(int page, double left, double top, double right, double bottom, String text) {
    }

    /** What a program prints; the test is skipped where the program is not installed. */
    public static String run(String... command) throws IOException, InterruptedException {
        Path out = Files.createTempFile("outside", ".txt");
        Path err = Files.createTempFile("outside", ".err");
        try {
            Process process = new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile())
                    .start();
            assertTrue(process.waitFor(120, TimeUnit.SECONDS), "does not end: " + String.join(" ", command));
            String complaint = Files.readString(err);
            assumeTrue(!complaint.contains("No module named"), complaint);
            assertEquals(0, process.exitValue(), complaint);
            return Files.readString(out, StandardCharsets.UTF_8);
        } finally {
            Files.delete(out);
            Files.delete(err);
        }
    }

    /** Skips the test where a program is not installed. */
    public static void needs(String program) {
        boolean there = false;
        for (String folder : System.getenv().getOrDefault("PATH", "").split(java.io.File.pathSeparator)) {
            there |= Files.isExecutable(Path.of(folder, program));
        }
        assumeTrue(there, program + " is not installed");
    }

    /** The text of a document as poppler reads it, in the layout of the page. */
    public static String text(Path pdf) throws IOException, InterruptedException {
        needs("pdftotext");
        return run("pdftotext", "-layout", pdf.toString(), "-");
    }

    /** The words of a document with their boxes as poppler finds them. */
    public static List<Word> words(Path pdf) throws IOException, InterruptedException {
        needs("pdftotext");
        List<Word> words = new ArrayList<>();
        int page = 0;
        for (String line : run("pdftotext", "-bbox", pdf.toString(), "-").lines().toList()) {
            if (line.contains("<page ")) {
                page++;
            }
            Matcher word = WORD.matcher(line);
            if (word.find()) {
                words.add(new Word(page, Double.parseDouble(word.group(1)), Double.parseDouble(word.group(2)),
                        Double.parseDouble(word.group(3)), Double.parseDouble(word.group(4)), word.group(5)));
            }
        }
        return words;
    }

    /** The python of the system, for which packages of the system are installed. */
    private static String python() {
        return Files.isExecutable(Path.of("/usr/bin/python3")) ? "/usr/bin/python3" : "python3";
    }

    /** The cells of a workbook as openpyxl reads them: {@code sheet row column type value}, by tabs. */
    public static List<String> cells(Path xlsx) throws IOException, InterruptedException {
        needs("python3");
        String script = "import sys, openpyxl\n"
                + "b = openpyxl.load_workbook(sys.argv[1])\n"
                + "for s in b.worksheets:\n"
                + "  for r in s.iter_rows():\n"
                + "    for c in r:\n"
                + "      if c.value is not None:\n"
                + "        print(s.title, c.row, c.column, c.data_type, c.value, sep='\\t')\n";
        return run(python(), "-c", script, xlsx.toString()).lines().toList();
    }

    /** The records of a file of comma-separated values as python's own module reads it, cells by tabs. */
    public static List<String> records(Path csv) throws IOException, InterruptedException {
        needs("python3");
        String script = "import sys, csv\n"
                + "for r in csv.reader(open(sys.argv[1], encoding='utf-8', newline='')):\n"
                + "  print('\\t'.join(r))\n";
        return run(python(), "-c", script, csv.toString()).lines().toList();
    }
}
