package org.stepwell.trend;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.stepwell.core.check.Share;
import org.stepwell.core.trend.GoalRule;
import org.stepwell.core.trend.Growth;
import org.stepwell.core.trend.LineStyle;
import org.stepwell.core.trend.TheilSen;
import org.stepwell.core.trend.Trend;
import org.stepwell.core.trend.Trend.Point;
import org.stepwell.core.trend.Trend.Scale;
import org.stepwell.core.trend.TrendGoal;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.ui.Words;

/** What a trend says, in one language. Below eight weeks no growth is given as one number, below three none at all. */
public final class TrendWording {
    private static final double ON_ONE_LINE = 1e-9;

    private final Words texts;

    /** Speaks this language. */
    public TrendWording(Language language) {
        this.texts = Words.of("trend", language);
    }

    /** A text of the charts by its name. */
    public String say(String key, Object... gaps) {
        return texts.say(key, gaps);
    }

    /** Month and day. */
    public String day(LocalDate day) {
        return texts.day(day);
    }

    /** One or two sentences on what the drawing shows. */
    public String finding(String title, Trend trend) {
        if (trend.points().isEmpty()) {
            return texts.say("unseen", title);
        }
        String key = trend.scale() == Scale.STEP ? "span" : "span.unit";
        String span = texts.say(key, title, trend.points().size(), value(trend.points().getFirst()),
                value(trend.points().getLast()));
        return switch (trend.style()) {
            case NONE -> span + " " + texts.say("no-line");
            case DASHED -> span + " " + texts.say("dashed") + fan(trend);
            case SOLID -> span + fan(trend);
        };
    }

    private String fan(Trend trend) {
        Growth growth = trend.growth();
        return growth == null || growth.seSlope() == null || growth.seSlope() < ON_ONE_LINE
                ? ""
                : " " + texts.say("fan");
    }

    /** What the hatched weeks are; empty when there are none. */
    public String gaps(Trend trend) {
        int closed = (int) trend.gaps().stream().filter(Trend.Gap::noSchool).count();
        if (trend.gaps().isEmpty()) {
            return "";
        }
        String all = texts.say("gaps", trend.gaps().size());
        return closed == 0 ? all : all + " " + texts.say("gaps.school", closed);
    }

    /** Growth in numbers, each with its interval; the caution last. */
    public List<String> growth(Trend trend) {
        Growth growth = trend.growth();
        if (growth == null || trend.style() == LineStyle.NONE || growth.slope() == null || growth.low95() == null
                || growth.high95() == null) {
            return List.of(texts.say("growth.none"));
        }
        if (growth.seSlope() != null && growth.seSlope() < ON_ONE_LINE) {
            return List.of(texts.say("growth.straight"));
        }
        String scale = trend.scale() == Scale.STEP ? "step" : "share";
        boolean few = trend.style() == LineStyle.DASHED;
        List<String> all = new ArrayList<>();
        all.add(few
                ? texts.say("growth.few." + scale, rate(trend, growth.low95()), rate(trend, growth.high95()))
                : texts.say("growth." + scale, rate(trend, growth.slope()), rate(trend, growth.low95()),
                        rate(trend, growth.high95())));
        TheilSen robust = growth.theilSen();
        if (robust == null || robust.low() == null || robust.high() == null) {
            all.add(texts.say("robust.none"));
        } else {
            all.add(texts.say((few ? "robust.few." : "robust.") + scale, rate(trend, robust.slope()),
                    rate(trend, robust.low()), rate(trend, robust.high())));
        }
        all.add(texts.say("growth.caution"));
        return all;
    }

    private String rate(Trend trend, double slope) {
        double shown = trend.scale() == Scale.STEP ? slope : 10 * slope;
        return String.format(texts.locale(), "%.2f", shown == 0 ? 0.0 : shown);
    }

    /** The name of a rule and what it looks at. */
    public String rule(GoalRule rule) {
        return texts.say("rule." + code(rule)) + ". " + texts.say("rule.is." + code(rule));
    }

    /** What a rule says. */
    public String call(GoalRule.Call call) {
        return texts.say("call." + code(call));
    }

    /** What is known against a rule. */
    public List<String> weaknesses(GoalRule rule) {
        return rule.weaknesses().stream().map(w -> texts.say("weakness." + w.code())).toList();
    }

    /** The goal with its day. */
    public String goal(TrendGoal goal) {
        return goal.skill() == null
                ? texts.say("goal.unit", number(10 * goal.target()), texts.day(goal.by()))
                : texts.say("goal", number(goal.target()), texts.day(goal.by()));
    }

    /** The value of a week: a mean step, or how many of how many skills. */
    public String value(Point point) {
        Share share = point.share();
        return share == null ? number(point.value()) : texts.say("of", share.hits(), share.of());
    }

    /** What so few skills can say about the share behind it; empty for a mean of steps. */
    public String interval(Point point) {
        Share share = point.share();
        Double low = share == null ? null : share.low95();
        Double high = share == null ? null : share.high95();
        return low == null || high == null ? "" : texts.say("interval", number(10 * low), number(10 * high));
    }

    /** A number with one decimal. */
    public String number(double value) {
        return String.format(texts.locale(), "%.1f", value);
    }

    private static String code(Enum<?> one) {
        return one.name().toLowerCase(Locale.ROOT);
    }
}
