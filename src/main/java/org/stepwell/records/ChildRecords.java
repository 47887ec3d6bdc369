package org.stepwell.records;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * All records on one child.
 *
 * @param name the child's name
 * @param purpose for whom
 * @param adult who had them made
 * @param on day they were made
 * @param rows rows by kind, oldest first, each from column to value
 */
record ChildRecords(String name, RecordsService.Purpose purpose, String adult, LocalDate on,
        Map<RecordKind, List<Map<String, @Nullable Object>>> rows) {}
