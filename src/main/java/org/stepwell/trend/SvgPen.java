package org.stepwell.trend;

import java.util.Locale;

/** Writes SVG markup in the ink of the page; numbers look the same in every language of the machine. */
final class SvgPen {
    private final StringBuilder svg = new StringBuilder();

    SvgPen raw(String markup) {
        svg.append(markup);
        return this;
    }

    void line(double x1, double y1, double x2, double y2, String style) {
        svg.append("<line x1=\"").append(f(x1)).append("\" y1=\"").append(f(y1)).append("\" x2=\"").append(f(x2))
                .append("\" y2=\"").append(f(y2)).append("\" stroke=\"currentColor\" ").append(style).append("/>");
    }

    void text(double x, double y, String anchor, String words) {
        svg.append("<text x=\"").append(f(x)).append("\" y=\"").append(f(y)).append("\" text-anchor=\"").append(anchor)
                .append("\" fill=\"currentColor\">").append(escaped(words)).append("</text>");
    }

    void dot(double x, double y) {
        svg.append("<circle cx=\"").append(f(x)).append("\" cy=\"").append(f(y))
                .append("\" r=\"5\" fill=\"currentColor\"/>");
    }

    void area(double x, double y, double width, double height, String fill, String kind) {
        svg.append("<rect class=\"").append(kind).append("\" x=\"").append(f(x)).append("\" y=\"").append(f(y))
                .append("\" width=\"").append(f(width)).append("\" height=\"").append(f(height))
                .append("\" fill=\"").append(fill).append("\"/>");
    }

    void shape(String style, double... xy) {
        svg.append("<polygon points=\"");
        for (int i = 0; i < xy.length; i += 2) {
            svg.append(i == 0 ? "" : " ").append(f(xy[i])).append(',').append(f(xy[i + 1]));
        }
        svg.append("\" fill=\"currentColor\" ").append(style).append("/>");
    }

    static String f(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }

    @Override
    public String toString() {
        return svg.toString();
    }
}
