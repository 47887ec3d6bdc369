package org.stepwell.tier;

import java.util.List;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.tier.WhatIf.Decided;
import org.stepwell.platform.csv.CsvTable;
import org.stepwell.platform.csv.Parsed;

/** The file {@code decisions.csv}: which tier was decided for which child on which day. */
public final class DecisionsCsv {
    private DecisionsCsv() {
    }

    /** Reads the bytes of a file. */
    public static Parsed<Decided> read(byte[] file) {
        return CsvTable.read(file, List.of("as_of", "child", "tier"), List.of("reason")).parse(
                row -> new Decided(row.date("as_of"), row.required("child"), row.read("tier", Tier::of)),
                decided -> List.of(decided.day(), decided.child()));
    }
}
