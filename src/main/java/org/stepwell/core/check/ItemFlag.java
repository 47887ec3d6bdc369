package org.stepwell.core.check;

import java.util.ArrayList;
import java.util.List;
import org.stepwell.core.check.ItemReport.ItemLine;

/**
 * Why a teacher may want to look at an item. It is never called a bad one: with one class these figures are rough. The
 * limits .30, .90 and .20 are Ebel's by common report (value from memory).
 */
public enum ItemFlag {
    /** Few had it right. */
    HARD,
    /** Nearly all had it right. */
    EASY,
    /** Children with many right did hardly better than those with few. */
    FLAT,
    /** Those who had it right had fewer of the others right. */
    AGAINST_THE_REST,
    /** A third or more did not come to it. */
    LATE;

    /** The flags of an item, in the order above; for fewer than ten children none. */
    public static List<ItemFlag> of(ItemLine item, int children) {
        List<ItemFlag> flags = new ArrayList<>();
        if (children < 10) {
            return flags;
        }
        Double p = item.p();
        boolean easy = p != null && p > 0.9;
        if (p != null && p < 0.3) {
            flags.add(HARD);
        }
        if (easy) {
            flags.add(EASY);
        }
        if (!easy && item.discrimination() != null && item.discrimination() < 0.2) {
            flags.add(FLAT);
        }
        if (item.rRest() != null && item.rRest() < 0) {
            flags.add(AGAINST_THE_REST);
        }
        if (3 * item.notReached() >= children) {
            flags.add(LATE);
        }
        return flags;
    }
}
