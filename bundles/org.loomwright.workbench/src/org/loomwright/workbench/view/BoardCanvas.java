// SPDX-License-Identifier: EPL-2.0
package org.loomwright.workbench.view;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.ACC;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.events.KeyEvent;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.MouseEvent;
import org.eclipse.swt.events.MouseListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.loomwright.sheets.compose.BoardPicture;
import org.loomwright.sheets.document.Ink;
import org.loomwright.sheets.document.Mark;
import org.loomwright.sheets.document.Point;

/**
 * Draws a formboard or a circuit as it is printed, black on white; it can be made larger and smaller with the wheel and
 * with keys, moved by dragging and with keys, and what lies on it be gone through with keys and clicked.
 */
final class BoardCanvas {

    /** How far the white of the sheet reaches beyond what is drawn, in pixels. */
    private static final int PAPER = 8;
    private static final double POINT = 25.4 / 72;
    private static final double STEP = 1.25;
    private static final int NEAR = 8;
    private static final int EDGE = 6;
    private static final int MOVE = 60;
    /** Dots a mm above which nothing is made larger by itself. */
    private static final double MOST = 6;
    /** Letters smaller than this many dots are not drawn. */
    private static final double LEGIBLE = 5;

    private final Canvas canvas;
    /** Dots a mm that make all of it as large as fits. */
    private static final double WHOLE = 0.02;

    private final String kind;
    private final double readable;
    private double least;
    private final UnaryOperator<String> words;
    private final Consumer<String> open;
    private String name = "";
    private Optional<BoardPicture> picture = Optional.empty();
    private String selected = "";
    /** True to see all of it, whatever the room. */
    private boolean all = true;
    /** Dots a mm. */
    private double scale;
    private double left;
    private double top;
    private org.eclipse.swt.graphics.Point grip;
    private boolean moved;

    /**
     * @param kind  what is drawn, for a screen reader: {@code Formboard}
     * @param least dots a mm that it is not made smaller than unless somebody asks for it; 0 to show all of it
     * @param words what is told of a thing of that name
     * @param open  opens its line
     */
    BoardCanvas(Composite parent, String kind, double least, UnaryOperator<String> words, Consumer<String> open) {
        this.kind = kind;
        this.readable = Math.max(least, WHOLE);
        this.least = readable;
        this.words = words;
        this.open = open;
        canvas = new Canvas(parent, SWT.BORDER | SWT.DOUBLE_BUFFERED);
        canvas.setData(kind, this);
        canvas.addPaintListener(event -> paint(event.gc));
        canvas.addListener(SWT.Resize, event -> canvas.redraw());
        canvas.addKeyListener(KeyListener.keyPressedAdapter(this::key));
        canvas.addMouseListener(MouseListener.mouseDownAdapter(event -> {
            canvas.setFocus();
            grip = new org.eclipse.swt.graphics.Point(event.x, event.y);
            moved = false;
        }));
        canvas.addMouseListener(MouseListener.mouseUpAdapter(this::released));
        canvas.addMouseMoveListener(this::dragged);
        canvas.addMouseWheelListener(event -> zoom(event.count > 0 ? STEP : 1 / STEP, event.x, event.y));
        canvas.addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT
                || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
        canvas.getAccessible().addAccessibleListener(new AccessibleAdapter() {

            @Override
            public void getName(AccessibleEvent event) {
                event.result = kind + " of " + name + (selected.isEmpty() ? "" : ", " + words.apply(selected));
            }
        });
    }

    /** The name of what is chosen; empty for nothing. */
    String selected() {
        return selected;
    }

    Control control() {
        return canvas;
    }

    void show(String harness, Optional<BoardPicture> now) {
        if (!harness.equals(name)) {
            all = true;
            selected = "";
        }
        name = harness;
        picture = now;
        if (now.filter(each -> each.paths().containsKey(selected)).isEmpty()) {
            selected = "";
        }
        canvas.redraw();
    }

    private void key(KeyEvent event) {
        Rectangle area = canvas.getClientArea();
        switch (event.keyCode) {
            case SWT.ARROW_LEFT -> move(MOVE, 0);
            case SWT.ARROW_RIGHT -> move(-MOVE, 0);
            case SWT.ARROW_UP -> move(0, MOVE);
            case SWT.ARROW_DOWN -> move(0, -MOVE);
            case SWT.PAGE_DOWN -> go(1);
            case SWT.PAGE_UP -> go(-1);
            case SWT.CR, SWT.KEYPAD_CR -> {
                if (!selected.isEmpty()) {
                    open.accept(selected);
                }
            }
            default -> {
                if (event.character == '+' || event.keyCode == SWT.KEYPAD_ADD) {
                    zoom(STEP, area.width / 2, area.height / 2);
                } else if (event.character == '-' || event.keyCode == SWT.KEYPAD_SUBTRACT) {
                    zoom(1 / STEP, area.width / 2, area.height / 2);
                } else if (event.character == '0') {
                    all = true;
                    least = WHOLE;
                    canvas.redraw();
                } else if (event.character == '1') {
                    all = true;
                    least = readable;
                    canvas.redraw();
                }
            }
        }
    }

    private void go(int by) {
        List<String> all = picture.map(each -> List.copyOf(each.paths().keySet())).orElse(List.of());
        if (!all.isEmpty()) {
            int at = all.indexOf(selected);
            choose(all.get(at < 0 ? by > 0 ? 0 : all.size() - 1 : Math.clamp(at + by, 0, all.size() - 1)));
        }
    }

    /** Selects, and moves the picture so that it is seen. */
    private void choose(String strand) {
        select(strand);
        fit();
        int[] dots = dots(picture.orElseThrow().paths().get(strand));
        Rectangle area = canvas.getClientArea();
        int x = Math.clamp(dots[0], EDGE, Math.max(EDGE, area.width - 3 * MOVE));
        int y = Math.clamp(dots[1], EDGE, Math.max(EDGE, area.height - 2 * MOVE));
        if (x != dots[0] || y != dots[1]) {
            move(area.width / 3.0 - dots[0], area.height / 3.0 - dots[1]);
        }
    }

    private void select(String strand) {
        selected = strand;
        canvas.setToolTipText(words.apply(strand).replace("&", "&&"));
        canvas.getAccessible().setFocus(ACC.CHILDID_SELF);
        canvas.redraw();
    }

    private void move(double dx, double dy) {
        fit();
        all = false;
        left += dx;
        top += dy;
        canvas.redraw();
    }

    private void zoom(double by, int x, int y) {
        fit();
        if (scale == 0) {
            return;
        }
        all = false;
        double wide = Math.clamp(scale * by, WHOLE, 40);
        left = x - (x - left) * wide / scale;
        top = y - (y - top) * wide / scale;
        scale = wide;
        canvas.redraw();
    }

    private void dragged(MouseEvent event) {
        if (grip != null && (moved || Math.abs(event.x - grip.x) + Math.abs(event.y - grip.y) > 4)) {
            moved = true;
            move(event.x - grip.x, event.y - grip.y);
            grip = new org.eclipse.swt.graphics.Point(event.x, event.y);
        }
    }

    private void released(MouseEvent event) {
        grip = null;
        if (!moved && scale > 0) {
            picture.flatMap(each -> each.nearest(new Point((event.x - left) / scale, (event.y - top) / scale),
                    NEAR / scale)).ifPresent(strand -> {
                        select(strand);
                        open.accept(strand);
                    });
        }
    }

    /** Has all of it seen, unless it was zoomed. */
    private void fit() {
        Rectangle area = canvas.getClientArea();
        if (all && picture.isPresent() && area.width > 0 && area.height > 0) {
            double width = picture.get().drawing().width();
            double height = picture.get().drawing().height();
            scale = Math.max(least, Math.min(MOST, Math.min((area.width - 2 * EDGE) / width, (area.height - 2 * EDGE)
                    / height)));
            left = Math.max(least > WHOLE ? EDGE : Integer.MIN_VALUE, (area.width - width * scale) / 2);
            top = Math.max(least > WHOLE ? EDGE : Integer.MIN_VALUE, (area.height - height * scale) / 2);
            picture.get().paths().values().stream().findFirst().map(this::dots).ifPresent(first -> {
                left = moved(left, first[0], width * scale, area.width);
                top = moved(top, first[1], height * scale, area.height);
            });
        }
    }

    /** Where a picture begins that is larger than the room for it: so that its first thing is seen, else as it was. */
    private static double moved(double begin, int first, double size, int room) {
        return size <= room || first < room - 2 * MOVE ? begin
                : Math.clamp(begin + room / 3.0 - first, room - EDGE - size, EDGE);
    }

    private void paint(GC gc) {
        fit();
        Display display = canvas.getDisplay();
        Rectangle area = canvas.getClientArea();
        gc.setBackground(canvas.getBackground());
        gc.fillRectangle(area);
        if (picture.isEmpty() || scale == 0) {
            return;
        }
        // the sheet is white in every theme: the inks of wires are those of paper
        gc.setBackground(display.getSystemColor(SWT.COLOR_WHITE));
        gc.fillRectangle(new Rectangle(x(0) - PAPER, y(0) - PAPER,
                (int) Math.ceil(picture.get().drawing().width() * scale) + 2 * PAPER,
                (int) Math.ceil(picture.get().drawing().height() * scale) + 2 * PAPER));
        gc.setAntialias(SWT.ON);
        List<Point> chosen = picture.get().paths().get(selected);
        if (chosen != null) {
            gc.setForeground(display.getSystemColor(SWT.COLOR_LIST_SELECTION));
            gc.setLineWidth((int) Math.clamp(26 * scale, 9, 14));
            gc.setLineStyle(SWT.LINE_SOLID);
            gc.drawPolyline(dots(chosen));
        }
        picture.get().drawing().marks().forEach(each -> mark(gc, each));
        if (canvas.isFocusControl()) {
            gc.setForeground(canvas.getForeground());
            gc.drawFocus(1, 1, area.width - 2, area.height - 2);
        }
    }

    private void mark(GC gc, Mark mark) {
        switch (mark) {
            case Mark.Stroke stroke -> {
                gc.setForeground(color(stroke.ink()));
                gc.setLineWidth((int) Math.max(1, Math.round(stroke.width() * scale)));
                gc.setLineStyle(stroke.dash() > 0 ? SWT.LINE_DASH : SWT.LINE_SOLID);
                gc.drawPolyline(dots(stroke.points()));
            }
            case Mark.Fill fill -> {
                gc.setBackground(color(fill.ink()));
                gc.fillPolygon(dots(fill.points()));
            }
            case Mark.Circle circle -> {
                int x = x(circle.centre().x() - circle.radius());
                int y = y(circle.centre().y() - circle.radius());
                int size = (int) Math.max(1, Math.round(2 * circle.radius() * scale));
                if (circle.filled()) {
                    gc.setBackground(color(circle.ink()));
                    gc.fillOval(x, y, size, size);
                } else {
                    gc.setForeground(color(circle.ink()));
                    gc.setLineStyle(SWT.LINE_SOLID);
                    gc.setLineWidth((int) Math.max(1, Math.round(circle.width() * scale)));
                    gc.drawOval(x, y, size, size);
                }
            }
            case Mark.Text text -> text(gc, text);
        }
    }

    private void text(GC gc, Mark.Text text) {
        double dots = text.points() * POINT * scale;
        if (dots < LEGIBLE) {
            return;
        }
        FontData data = canvas.getFont().getFontData()[0];
        Font font = new Font(canvas.getDisplay(), data.getName(),
                (int) Math.max(1, Math.floor(dots * 72 / canvas.getDisplay().getDPI().y)),
                text.bold() ? SWT.BOLD : SWT.NORMAL);
        gc.setFont(font);
        gc.setForeground(color(text.ink()));
        gc.drawText(text.text(), x(text.at().x()), y(text.at().y()) - gc.getFontMetrics().getAscent(), true);
        gc.setFont(null);
        font.dispose();
    }

    private static Color color(Ink ink) {
        return new Color(ink.red(), ink.green(), ink.blue());
    }

    private int x(double mm) {
        return (int) Math.round(left + mm * scale);
    }

    private int y(double mm) {
        return (int) Math.round(top + mm * scale);
    }

    private int[] dots(List<Point> points) {
        int[] dots = new int[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            dots[2 * i] = x(points.get(i).x());
            dots[2 * i + 1] = y(points.get(i).y());
        }
        return dots;
    }
}
