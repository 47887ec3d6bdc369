/**
 * What does a specialist or a team need of one child on paper? Gathers what other features keep; no tables of its own. Routes
 * /api/children/{child}/report.pdf and report.csv.
 */
@NullMarked
package org.stepwell.report;

import org.jspecify.annotations.NullMarked;
