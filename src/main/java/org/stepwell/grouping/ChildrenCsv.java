package org.stepwell.grouping;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.grouping.GroupChild;
import org.stepwell.core.tier.Tier;
import org.stepwell.platform.csv.CsvRow;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.Parsed;

/** The file {@code children.csv}: those to be grouped. Only {@code child} must be filled; what is empty is not known. */
public final class ChildrenCsv {
    private static final List<String> COLUMNS = List.of("child", "tier", "focus_skill", "estimate", "last_group");

    private ChildrenCsv() {
    }

    /** Reads the bytes of a file. */
    public static Parsed<GroupChild> read(byte[] file) {
        return CsvTable.read(file, COLUMNS, List.of()).parse(ChildrenCsv::child, GroupChild::id);
    }

    private static GroupChild child(CsvRow row) {
        String child = row.required("child");
        if (child.chars().anyMatch(Character::isISOControl)) {
            throw new CsvRow.Bad("child", "cell.control");
        }
        String last = row.orNull("last_group");
        return new GroupChild(child, row.orNull("tier") == null ? null : row.read("tier", Tier::of),
                row.orNull("focus_skill"), estimate(row), last, last == null ? 0 : 1);
    }

    private static @Nullable Double estimate(CsvRow row) {
        String text = row.text("estimate").strip();
        if (text.isEmpty()) {
            return null;
        }
        if (!text.matches("[0-9]{1,3}(\\.[0-9]{1,20})?") || Double.parseDouble(text) > GroupChild.HIGHEST) {
            throw new CsvRow.Bad("estimate", "cell.estimate",
                    text.length() > 40 ? text.substring(0, 40) + "..." : text);
        }
        return Double.valueOf(text);
    }
}
