package org.stepwell.core.trend;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import tech.tablesaw.aggregate.AggregateFunctions;
import tech.tablesaw.api.DateColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.Row;
import tech.tablesaw.api.Table;

/** Whole numbers that belong to days, added up by week. */
final class WeeklyTotals {
    private final DateColumn weeks = DateColumn.create("week");
    private final IntColumn values = IntColumn.create("value");

    /** @param monday first day of the week */
    record Total(LocalDate monday, long sum, int count) {
        double mean() {
            return (double) sum / count;
        }
    }

    void add(LocalDate day, int value) {
        weeks.append(mondayOf(day));
        values.append(value);
    }

    static LocalDate mondayOf(LocalDate day) {
        return day.with(DayOfWeek.MONDAY);
    }

    /** The weeks that have a number, oldest first. */
    List<Total> byWeek() {
        List<Total> totals = new ArrayList<>();
        if (weeks.isEmpty()) {
            return totals;
        }
        Table summary = Table.create(weeks, values)
                .summarize("value", AggregateFunctions.sum, AggregateFunctions.count).by("week").sortOn("week");
        for (Row row : summary) {
            totals.add(new Total(row.getDate("week"), Math.round(row.getDouble("Sum [value]")),
                    (int) Math.round(row.getDouble("Count [value]"))));
        }
        return totals;
    }
}
