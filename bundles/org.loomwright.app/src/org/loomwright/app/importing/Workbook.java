// SPDX-License-Identifier: EPL-2.0
package org.loomwright.app.importing;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.loomwright.app.BadCall;
import org.loomwright.app.importing.WireTable.Row;

/**
 * The texts of the first sheet of a spreadsheet, after ISO/IEC 29500-1 (SpreadsheetML). Formulas count as what they
 * last came to. Takes no document type and nothing from outside of the file, and unpacks no more than
 * {@value #MOST_BYTES} bytes.
 */
final class Workbook {

    private static final int MOST_BYTES = 64 << 20;
    private static final int MOST_PARTS = 5_000;
    private static final int MOST_COLUMNS = 500;
    private static final MathContext DIGITS = new MathContext(15);
    private static final String RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static final String STRICT_RELATIONS = "http://purl.oclc.org/ooxml/officeDocument/relationships";

    private final Map<String, byte[]> parts = new HashMap<>();
    private final XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    private final List<String> shared = new ArrayList<>();

    private Workbook() {
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    }

    /** Whether the bytes begin as those of a spreadsheet, and of no text, do. */
    static boolean is(byte[] bytes) {
        return bytes.length > 3 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3 && bytes[3] == 4;
    }

    /**
     * The rows of the first sheet that have a text, with their numbers.
     *
     * @throws BadCall if it is no spreadsheet, is broken, or holds too much
     */
    static List<Row> rows(byte[] bytes) throws BadCall {
        Workbook book = new Workbook();
        try {
            book.unpack(bytes);
            book.readShared();
            return book.sheet(book.firstSheet());
        } catch (IOException | XMLStreamException | IllegalArgumentException e) {
            throw new BadCall("the spreadsheet cannot be read: it is broken off or damaged");
        }
    }

    private void unpack(byte[] bytes) throws IOException, BadCall {
        int left = MOST_BYTES;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] part = zip.readNBytes(left + 1);
                left -= part.length;
                if (left < 0 || parts.size() == MOST_PARTS) {
                    throw new BadCall("the spreadsheet unpacks to more than " + (MOST_BYTES >> 20)
                            + " MB; save the wire list alone");
                }
                parts.put(entry.getName(), part);
            }
        }
        if (!parts.containsKey("xl/workbook.xml")) {
            throw new BadCall("this is no spreadsheet (.xlsx): it holds no workbook");
        }
    }

    private XMLStreamReader open(String part) throws XMLStreamException {
        return factory.createXMLStreamReader(new ByteArrayInputStream(parts.get(part)));
    }

    /** The part that holds the sheet that stands first. */
    private String firstSheet() throws XMLStreamException, BadCall {
        String id = null;
        XMLStreamReader book = open("xl/workbook.xml");
        while (book.hasNext() && id == null) {
            if (book.next() == XMLStreamConstants.START_ELEMENT && book.getLocalName().equals("sheet")) {
                String usual = book.getAttributeValue(RELATIONS, "id");
                id = usual != null ? usual : book.getAttributeValue(STRICT_RELATIONS, "id");
            }
        }
        String target = id == null || !parts.containsKey("xl/_rels/workbook.xml.rels") ? null : target(id);
        if (target == null || !parts.containsKey(target)) {
            throw new BadCall("the spreadsheet has no sheet");
        }
        return target;
    }

    private String target(String id) throws XMLStreamException {
        XMLStreamReader relations = open("xl/_rels/workbook.xml.rels");
        while (relations.hasNext()) {
            if (relations.next() == XMLStreamConstants.START_ELEMENT
                    && relations.getLocalName().equals("Relationship")
                    && id.equals(relations.getAttributeValue(null, "Id"))) {
                String target = relations.getAttributeValue(null, "Target");
                return target == null ? null : target.startsWith("/") ? target.substring(1) : "xl/" + target;
            }
        }
        return null;
    }

    private void readShared() throws XMLStreamException {
        if (!parts.containsKey("xl/sharedStrings.xml")) {
            return;
        }
        XMLStreamReader strings = open("xl/sharedStrings.xml");
        while (strings.hasNext()) {
            if (strings.next() == XMLStreamConstants.START_ELEMENT && strings.getLocalName().equals("si")) {
                shared.add(text(strings, "si"));
            }
        }
    }

    /** The text of an element in all its runs; how it is spoken is left out. */
    private static String text(XMLStreamReader in, String end) throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        boolean spoken = false;
        while (true) {
            int event = in.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                spoken |= in.getLocalName().equals("rPh");
                if (in.getLocalName().equals("t") && !spoken) {
                    text.append(in.getElementText());
                }
            } else if (event == XMLStreamConstants.END_ELEMENT) {
                spoken &= !in.getLocalName().equals("rPh");
                if (in.getLocalName().equals(end)) {
                    return text.toString();
                }
            }
        }
    }

    private List<Row> sheet(String part) throws XMLStreamException, BadCall {
        List<Row> rows = new ArrayList<>();
        XMLStreamReader in = open(part);
        String[] cells = new String[0];
        long number = 0;
        while (in.hasNext()) {
            int event = in.next();
            if (event == XMLStreamConstants.START_ELEMENT && in.getLocalName().equals("row")) {
                String given = in.getAttributeValue(null, "r");
                number = given == null ? number + 1 : Long.parseLong(given);
                cells = new String[0];
            } else if (event == XMLStreamConstants.START_ELEMENT && in.getLocalName().equals("c")) {
                int column = column(in.getAttributeValue(null, "r"), cells.length);
                int before = cells.length;
                cells = Arrays.copyOf(cells, Math.max(before, column + 1));
                Arrays.fill(cells, before, cells.length, "");
                cells[column] = cell(in).strip();
            } else if (event == XMLStreamConstants.END_ELEMENT && in.getLocalName().equals("row")
                    && Arrays.stream(cells).anyMatch(cell -> !cell.isEmpty())) {
                if (rows.size() > WireTable.MOST_ROWS) {
                    throw WireTable.tooLong();
                }
                rows.add(new Row(number, List.of(cells)));
            }
        }
        return rows;
    }

    /** The column of a cell like {@code AB12}, from 0; the next one where none is stated. */
    private static int column(String reference, int next) throws BadCall {
        int column = 0;
        for (int i = 0; reference != null && i < reference.length() && Character.isLetter(reference.charAt(i)); i++) {
            column = Math.min(MOST_COLUMNS + 1, column * 26 + Character.toUpperCase(reference.charAt(i)) - 'A' + 1);
        }
        int found = reference == null ? next : column - 1;
        if (found < 0 || found >= MOST_COLUMNS) {
            throw new BadCall("the sheet has more than " + MOST_COLUMNS + " columns; save the wire list alone");
        }
        return found;
    }

    private String cell(XMLStreamReader in) throws XMLStreamException {
        String type = in.getAttributeValue(null, "t");
        String value = "";
        while (true) {
            int event = in.next();
            if (event == XMLStreamConstants.START_ELEMENT && in.getLocalName().equals("v")) {
                value = in.getElementText();
            } else if (event == XMLStreamConstants.START_ELEMENT && in.getLocalName().equals("is")) {
                value = text(in, "is");
            } else if (event == XMLStreamConstants.END_ELEMENT && in.getLocalName().equals("c")) {
                return shown(value, type == null ? "n" : type);
            }
        }
    }

    private String shown(String value, String type) {
        return switch (type) {
            case "s" -> shared.get(Math.clamp(Long.parseLong(value), 0, shared.size() - 1));
            case "n" -> value.isEmpty() ? "" : number(Double.parseDouble(value));
            default -> value;
        };
    }

    /** To the fifteen digits that a cell holds at least. An infinite number is none. */
    private static String number(double value) {
        return BigDecimal.valueOf(value).round(DIGITS).stripTrailingZeros().toPlainString();
    }
}
