// SPDX-License-Identifier: EPL-2.0
package org.loomwright.sheets.write;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.loomwright.sheets.document.Block;

/**
 * Writes tables as a workbook, one sheet a table (ISO/IEC 29500). Every cell is a text or a number, never a formula.
 * Equal tables give equal bytes: the time in the file is a fixed one. Linear in the number of cells.
 */
public final class XlsxWriter {

    private static final Pattern NUMBER = Pattern.compile("-?(0|[1-9][0-9]{0,14})(\\.[0-9]{1,9})?");
    private static final Pattern FORBIDDEN = Pattern.compile("[\\\\/?*:\\[\\]]");
    private static final Pattern CREATED = Pattern.compile("(<dcterms:created[^>]*>)[^<]*");
    private static final int LONGEST_NAME = 31;
    private static final int LONGEST_CELL = 32_767;
    private static final int WIDEST = 48;
    private static final String TIME = "1980-02-01T00:00:00Z";

    private XlsxWriter() {
    }

    /** The bytes of the file; at least one table. */
    public static byte[] bytes(List<Block.Grid> grids) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            try (Workbook book = new Workbook(out, "Loomwright", "1.0")) {
                for (int i = 0; i < grids.size(); i++) {
                    write(book.newWorksheet(name(grids.get(i).name(), i)), grids.get(i));
                }
            }
            return timeless(out.toByteArray());
        } catch (IOException e) {
            throw new UncheckedIOException("a workbook could not be put together", e);
        }
    }

    private static String name(String wished, int index) {
        String clean = FORBIDDEN.matcher(wished).replaceAll(" ").strip();
        String number = index == 0 ? "" : " " + (index + 1);
        return clean.substring(0, Math.min(clean.length(), LONGEST_NAME - number.length())) + number;
    }

    private static void write(Worksheet sheet, Block.Grid grid) {
        int[] widths = new int[grid.columns().size()];
        for (int i = 0; i < widths.length; i++) {
            sheet.value(0, i, grid.columns().get(i).heading());
            widths[i] = grid.columns().get(i).heading().length();
        }
        sheet.range(0, 0, 0, Math.max(0, widths.length - 1)).style().bold().wrapText(true).set();
        int at = 1;
        for (Block.Row row : grid.rows()) {
            if (row.strong()) {
                continue;
            }
            for (int i = 0; i < widths.length; i++) {
                String text = row.cells().get(i).text();
                if (grid.columns().get(i).figures() && NUMBER.matcher(text).matches()) {
                    sheet.value(at, i, Double.parseDouble(text));
                } else if (!text.isEmpty()) {
                    sheet.value(at, i, legal(text));
                }
                widths[i] = Math.max(widths[i], text.length());
            }
            at++;
        }
        for (int i = 0; i < widths.length; i++) {
            sheet.width(i, Math.min(WIDEST, widths[i] + 2));
        }
        sheet.freezePane(0, 1);
    }

    /** What XML can hold, as long as a cell can be. Numbers as text stay text, so leading zeros survive. */
    private static String legal(String text) {
        String legal = text.codePoints().filter(each -> each >= 0x20 || each == '\n' || each == '\t')
                .filter(each -> each < 0xd800 || each > 0xdfff && each != 0xfffe && each != 0xffff)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
        return legal.substring(0, Math.min(legal.length(), LONGEST_CELL));
    }

    /** The same file with a fixed time in its properties and its directory. */
    private static byte[] timeless(byte[] file) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            for (Map.Entry<String, byte[]> each : ZipEntries.of(file).entrySet()) {
                byte[] content = each.getValue();
                if (each.getKey().toLowerCase(Locale.ROOT).endsWith("core.xml")) {
                    content = CREATED.matcher(new String(content, StandardCharsets.UTF_8)).replaceAll("$1" + TIME)
                            .getBytes(StandardCharsets.UTF_8);
                }
                ZipEntry same = new ZipEntry(each.getKey());
                same.setTimeLocal(LocalDateTime.of(1980, 2, 1, 0, 0));
                zip.putNextEntry(same);
                zip.write(content);
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }
}
