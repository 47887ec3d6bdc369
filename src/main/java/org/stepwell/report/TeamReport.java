package org.stepwell.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.tier.ChildState.OpenRequest;
import org.stepwell.core.tier.Tier;
import org.stepwell.plan.Plan;
import org.stepwell.privacy.FamilyRequest;
import org.stepwell.tier.DecisionLine;

/**
 * Everything known of one child, for those who sit together about it.
 *
 * @param name of the child, as the class calls it
 * @param className class
 * @param by adult who asks for it
 * @param on day
 * @param tier support that runs
 * @param progression names skills, steps and phrases
 * @param due expected step by skill
 * @param skills where the child stands, in the order of the progression; those seen
 * @param looks every look that counts, oldest first
 * @param left how many notes were left out because they name another child
 * @param adults names of adults by the sign-in names that stand in looks
 * @param decisions what was decided, oldest first
 * @param open concerns and requests for evaluation that wait for an answer
 * @param statements what the family put beside the record, and the day
 * @param plansShared whether plans may be read
 * @param plans plans, oldest first
 */
record TeamReport(String name, String className, String by, LocalDate on, Tier tier, Progression progression,
        Map<String, Integer> due, List<SkillEstimate> skills, List<Look> looks, int left, Map<String, String> adults,
        List<DecisionLine> decisions, List<OpenRequest> open,
        List<FamilyRequest.Step> statements, boolean plansShared, List<Plan> plans) {}
