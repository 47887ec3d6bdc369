package org.stepwell.check;

import java.util.List;
import java.util.Map;
import org.stepwell.core.check.AgainstTable;
import org.stepwell.core.check.ItemReport;
import org.stepwell.core.check.SkillResult;
import org.stepwell.roster.ChildRow;

/**
 * What a check tells, by child and by item.
 *
 * @param sheet the check
 * @param report item and test statistics of those who sat it
 * @param children those who sat it, by name
 * @param errors most frequent error tag by item, where two children or more made it
 * @param carryOver what to take into the next unit's warm-ups, by name
 */
public record CheckResults(CheckSheet sheet, ItemReport report, List<OneChild> children, Map<String, Frequent> errors,
        List<CarryOver> carryOver) {

    /**
     * One child.
     *
     * @param total marks added up, halves as half
     * @param reached items answered
     * @param skills by skill, in the order of the items
     * @param apart skills on which the check and the table tell different things
     */
    public record OneChild(ChildRow child, double total, int reached, List<SkillResult> skills,
            List<AgainstTable> apart) {}

    /** An error tag and how many children made it at an item. */
    public record Frequent(String error, int children) {}

    /** A child and a skill for the next warm-ups. */
    public record CarryOver(ChildRow child, String skill, Why why) {}

    /** Why a skill is carried over. */
    public enum Why {
        /** Half of its items or fewer right. */
        MISSED,
        /** More than half right, not yet four of five. */
        PARTLY,
        /** Fewer than three of its items reached. */
        TOO_FEW,
        /** The child was not there. */
        ABSENT,
        /** The check and the table tell different things. */
        APART
    }
}
