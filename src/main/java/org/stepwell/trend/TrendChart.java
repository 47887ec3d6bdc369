package org.stepwell.trend;

import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import org.stepwell.core.trend.LeastSquares;
import org.stepwell.core.trend.LineStyle;
import org.stepwell.core.trend.WeeklySeries.Week;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.ui.Words;

/**
 * A series of weeks as an accessible drawing: points, a line through them that is dashed below eight weeks and missing
 * below three, and the expected step. Black on white prints the same.
 */
public final class TrendChart {
    private final Words texts;

    private static final int WIDTH = 640;
    private static final int HEIGHT = 260;
    private static final int LEFT = 44;
    private static final int BOTTOM = 34;
    private static final int TOP = 14;

    /** A drawing that speaks this language. */
    public TrendChart(Language language) {
        this.texts = Words.of("trend", language);
    }

    /** One sentence on what the drawing shows. */
    public String finding(String title, List<Week> weeks) {
        if (weeks.isEmpty()) {
            return texts.say("unseen", title);
        }
        String span = texts.say("span", title, weeks.size(), number(weeks.getFirst().mean()),
                number(weeks.getLast().mean()));
        return switch (LineStyle.of(weeks.size())) {
            case NONE -> span + " " + texts.say("no-line");
            case DASHED -> span + " " + texts.say("dashed");
            case SOLID -> span;
        };
    }

    /** The drawing as SVG markup; holds no name and no text from people. */
    public String svg(String title, List<Week> weeks, int expected) {
        StringBuilder svg = new StringBuilder();
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart\" viewBox=\"0 0 ").append(WIDTH).append(' ')
                .append(HEIGHT).append("\" role=\"img\" aria-labelledby=\"chart-title chart-desc\">")
                .append("<title id=\"chart-title\">").append(escaped(title)).append("</title><desc id=\"chart-desc\">")
                .append(escaped(finding(title, weeks))).append("</desc>");
        for (int step = 1; step <= 5; step++) {
            line(svg, LEFT, y(step), WIDTH - 10, y(step), "stroke=\"currentColor\" stroke-opacity=\"0.2\"");
            text(svg, 8, y(step) + 5, Integer.toString(step));
        }
        if (expected > 0) {
            line(svg, LEFT, y(expected), WIDTH - 10, y(expected),
                    "stroke=\"currentColor\" stroke-width=\"1.5\" stroke-dasharray=\"2 5\"");
            text(svg, WIDTH - 90, y(expected) - 6, texts.say("expected", expected));
        }
        if (!weeks.isEmpty()) {
            points(svg, weeks);
        }
        return svg.append("</svg>").toString();
    }

    private void points(StringBuilder svg, List<Week> weeks) {
        double span = Math.max(1, weekOf(weeks.getLast(), weeks));
        LineStyle style = LineStyle.of(weeks.size());
        if (style != LineStyle.NONE) {
            double[] x = weeks.stream().mapToDouble(w -> weekOf(w, weeks)).toArray();
            LeastSquares fit = LeastSquares.fit(x, weeks.stream().mapToDouble(Week::mean).toArray());
            line(svg, x(0, span), y(clipped(fit.at(0))), x(span, span), y(clipped(fit.at(span))),
                    "stroke=\"currentColor\" stroke-width=\"2\""
                            + (style == LineStyle.DASHED ? " stroke-dasharray=\"7 5\"" : ""));
        }
        for (Week week : weeks) {
            double at = x(weekOf(week, weeks), span);
            svg.append("<circle cx=\"").append(f(at)).append("\" cy=\"").append(f(y(week.mean())))
                    .append("\" r=\"5\" fill=\"currentColor\"/>");
        }
        text(svg, LEFT, HEIGHT - 8, texts.day(weeks.getFirst().monday()));
        if (weeks.size() > 1) {
            text(svg, WIDTH - 96, HEIGHT - 8, texts.day(weeks.getLast().monday()));
        }
    }

    private static double clipped(double step) {
        return Math.max(1, Math.min(5, step));
    }

    private static double weekOf(Week week, List<Week> weeks) {
        return ChronoUnit.WEEKS.between(weeks.getFirst().monday(), week.monday());
    }

    private static double x(double week, double span) {
        return LEFT + 12 + week / span * (WIDTH - LEFT - 34);
    }

    private static double y(double step) {
        return TOP + (5 - step) / 4 * (HEIGHT - TOP - BOTTOM);
    }

    private static void line(StringBuilder svg, double x1, double y1, double x2, double y2, String style) {
        svg.append("<line x1=\"").append(f(x1)).append("\" y1=\"").append(f(y1)).append("\" x2=\"").append(f(x2))
                .append("\" y2=\"").append(f(y2)).append("\" ").append(style).append("/>");
    }

    private static void text(StringBuilder svg, double x, double y, String words) {
        svg.append("<text x=\"").append(f(x)).append("\" y=\"").append(f(y))
                .append("\" font-size=\"13\" fill=\"currentColor\">").append(escaped(words)).append("</text>");
    }

    private static String f(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    /** A mean step with one decimal. */
    public String number(double step) {
        return String.format(texts.locale(), "%.1f", step);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
