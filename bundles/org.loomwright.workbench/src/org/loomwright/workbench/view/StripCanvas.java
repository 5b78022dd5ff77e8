// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.events.KeyEvent;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.MouseEvent;
import org.eclipse.swt.events.MouseListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.loomwright.workbench.text.Inks;

/** Draws a strip, and lets it be walked with keys and clicked with the mouse. Colours are those of the theme. */
final class StripCanvas {

    private static final int MARGIN = 60;
    private static final int LINE = 20;
    private static final int STEP = 14;
    private static final int WORDS = 190;

    private final Canvas canvas;
    private final Consumer<Strip.Item> open;
    private Rectangle[] areas = {};
    private Strip strip = new Strip(List.of(), "", List.of(), 1, "");
    private int selected;

    StripCanvas(Composite parent, Consumer<Strip.Item> open) {
        this.open = open;
        canvas = new Canvas(parent, SWT.BORDER | SWT.DOUBLE_BUFFERED | SWT.V_SCROLL);
        canvas.addPaintListener(event -> paint(event.gc));
        canvas.addListener(SWT.Resize, event -> canvas.redraw());
        canvas.addKeyListener(KeyListener.keyPressedAdapter(this::key));
        canvas.addMouseListener(MouseListener.mouseDownAdapter(this::click));
        canvas.addListener(SWT.FocusIn, event -> canvas.redraw());
        canvas.addListener(SWT.FocusOut, event -> canvas.redraw());
        canvas.addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT
                || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
        canvas.getVerticalBar().addListener(SWT.Selection, event -> canvas.redraw());
        canvas.getAccessible().addAccessibleListener(new AccessibleAdapter() {

            @Override
            public void getName(AccessibleEvent event) {
                event.result = strip.items().isEmpty() ? "Strip of the harness, empty"
                        : strip.name() + ": " + strip.items().get(selected).detail();
            }
        });
    }

    Control control() {
        return canvas;
    }

    void show(Strip now) {
        String kept = selected < strip.items().size() ? strip.items().get(selected).name() : "";
        strip = now;
        areas = new Rectangle[0];
        selected = IntStream.range(0, now.items().size()).filter(i -> now.items().get(i).name().equals(kept))
                .findFirst().orElse(0);
        canvas.redraw();
    }

    private void key(KeyEvent event) {
        int last = strip.items().size() - 1;
        switch (event.keyCode) {
            case SWT.ARROW_RIGHT, SWT.ARROW_DOWN -> select(Math.min(last, selected + 1));
            case SWT.ARROW_LEFT, SWT.ARROW_UP -> select(selected - 1);
            case SWT.HOME -> select(0);
            case SWT.END -> select(last);
            case SWT.CR, SWT.KEYPAD_CR -> {
                if (last >= 0) {
                    open.accept(strip.items().get(selected));
                }
            }
            default -> {
                // not ours
            }
        }
    }

    private void click(MouseEvent event) {
        canvas.setFocus();
        for (int i = areas.length - 1; i >= 0; i--) {
            if (areas[i] != null && areas[i].contains(event.x, event.y)) {
                select(i);
                open.accept(strip.items().get(i));
                return;
            }
        }
    }

    private void select(int index) {
        selected = Math.max(0, index);
        canvas.setToolTipText(strip.items().isEmpty() ? null : strip.items().get(selected).detail());
        canvas.getAccessible().setFocus(ACC.CHILDID_SELF);
        canvas.redraw();
    }

    private void paint(GC gc) {
        List<Strip.Item> items = strip.items();
        Rectangle size = canvas.getClientArea();
        areas = new Rectangle[items.size()];
        if (items.isEmpty()) {
            return;
        }
        double scale = Math.max(0.01, (size.width - 2.0 * MARGIN - WORDS) / strip.length());
        List<Integer> spots = IntStream.range(0, items.size()).boxed()
                .filter(i -> items.get(i).kind() != Strip.Kind.BRANCH)
                .sorted(Comparator.comparingDouble(i -> items.get(i).station())).toList();
        int[] rows = labelRows(gc, spots, scale);
        int trunk = 12 + LINE * (IntStream.of(rows).max().orElse(0) + 1) - canvas.getVerticalBar().getSelection();
        gc.setForeground(canvas.getForeground());
        gc.setLineWidth(4);
        gc.drawLine(MARGIN, trunk, MARGIN + (int) (strip.length() * scale), trunk);
        int bottom = branches(gc, trunk, scale, size.width);
        for (int i = 0; i < spots.size(); i++) {
            spot(gc, spots.get(i), rows[i], trunk, scale);
        }
        if (canvas.isFocusControl() && areas[selected] != null) {
            Rectangle area = areas[selected];
            gc.setForeground(canvas.getForeground());
            gc.setLineStyle(SWT.LINE_SOLID);
            gc.setLineWidth(1);
            gc.drawFocus(area.x - 2, area.y, area.width + 4, area.height);
        }
        scroll(bottom + canvas.getVerticalBar().getSelection() + LINE, size.height);
    }

    /** For each spot the row of its label above the trunk, so that no label lies on another. */
    private int[] labelRows(GC gc, List<Integer> spots, double scale) {
        int[] rows = new int[spots.size()];
        List<Integer> ends = new ArrayList<>();
        for (int i = 0; i < rows.length; i++) {
            Strip.Item item = strip.items().get(spots.get(i));
            int half = gc.textExtent(item.label()).x / 2;
            int x = MARGIN + (int) (item.station() * scale);
            int row = 0;
            while (row < ends.size() && ends.get(row) > x - half) {
                row++;
            }
            if (row == ends.size()) {
                ends.add(0);
            }
            ends.set(row, x + half + 6);
            rows[i] = row;
        }
        return rows;
    }

    /** Branches hang below, those that leave last on top, so that no line crosses the words of another. */
    private int branches(GC gc, int trunk, double scale, int width) {
        List<Integer> order = IntStream.range(0, strip.items().size()).boxed()
                .filter(i -> strip.items().get(i).kind() == Strip.Kind.BRANCH)
                .sorted(Comparator.comparingDouble((Integer i) -> strip.items().get(i).station()).reversed()).toList();
        int y = trunk + 4;
        for (int i : order) {
            Strip.Item item = strip.items().get(i);
            y += LINE;
            ink(gc, item);
            String words = item.label() + (item.there() ? "" : " (not here)");
            Point extent = gc.textExtent(words);
            int from = MARGIN + (int) (item.station() * scale) + item.depth() * STEP;
            int room = Math.max(STEP, width - from - extent.x - LINE);
            int to = from + Math.clamp((int) (item.length() * scale), STEP, room);
            gc.setLineWidth(2);
            gc.drawLine(from, trunk, from, y);
            gc.drawLine(from, y, to, y);
            gc.drawText(words, to + 6, y - extent.y / 2, true);
            areas[i] = new Rectangle(from, y - LINE / 2, to - from + extent.x + 12, LINE);
        }
        return y;
    }

    private void spot(GC gc, int index, int row, int trunk, double scale) {
        Strip.Item item = strip.items().get(index);
        ink(gc, item);
        gc.setLineStyle(SWT.LINE_SOLID);
        int x = MARGIN + (int) (item.station() * scale);
        Point extent = gc.textExtent(item.label());
        int top = trunk - 8 - extent.y - row * LINE;
        gc.setLineWidth(1);
        gc.drawLine(x, trunk, x, top + extent.y);
        gc.setBackground(gc.getForeground());
        if (item.kind() == Strip.Kind.DATUM) {
            gc.fillRectangle(x - 6, trunk - 6, 12, 12);
        } else {
            gc.fillOval(x - 5, trunk - 5, 11, 11);
        }
        gc.setBackground(canvas.getBackground());
        gc.drawText(item.label(), x - extent.x / 2, top, false);
        areas[index] = new Rectangle(x - Math.max(8, extent.x / 2), top, Math.max(16, extent.x), trunk - top + 8);
    }

    private void ink(GC gc, Strip.Item item) {
        Color pale = Inks.PALE.colour();
        gc.setForeground(item.there() ? canvas.getForeground() : pale);
        gc.setLineStyle(item.there() ? SWT.LINE_SOLID : SWT.LINE_DASH);
    }

    private void scroll(int needed, int height) {
        var bar = canvas.getVerticalBar();
        bar.setVisible(needed > height);
        bar.setValues(needed > height ? bar.getSelection() : 0, 0, Math.max(needed, height + 1), Math.max(1, height),
                LINE, Math.max(1, height));
    }
}
