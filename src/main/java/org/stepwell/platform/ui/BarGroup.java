package org.stepwell.platform.ui;

import java.util.Locale;

/**
 * The groups of screens on the bar, in the order of a teacher's time. A screen takes its place by the order of its menu
 * entry alone: {@code @Menu(order = 210, ...)} is the week's, because 210 lies between 200 and 299.
 */
enum BarGroup {
    /** 0 to 99: what is in hand now. */
    TODAY,
    /** 100 to 199: the block of groups and stations, and who sits where. */
    BLOCK,
    /** 200 to 299: where each child stands, and what to decide once a week. */
    WEEK,
    /** 300 to 399: the lessons of the unit, what was seen of them, its check. */
    UNIT,
    /** 400 to 499: what goes home and what is said to parents. */
    FAMILIES,
    /** 500 to 599: the class itself: its people, files and tablets. */
    CLASS;

    private static final int EACH = 100;

    /**
     * The group of a menu entry.
     *
     * @param order the entry's order, 0 to 599
     * @throws IllegalArgumentException when no group has that order
     */
    static BarGroup of(double order) {
        if (order < 0 || order >= EACH * values().length) {
            throw new IllegalArgumentException(order + ": 0 to 599");
        }
        return values()[(int) (order / EACH)];
    }

    /** The key of its name in the words of the shell. */
    String key() {
        return "group." + name().toLowerCase(Locale.ROOT);
    }
}
