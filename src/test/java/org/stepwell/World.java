package org.stepwell;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationContext;
import org.stepwell.block.BlockService;
import org.stepwell.check.CheckService;
import org.stepwell.conference.FamilyTalkService;
import org.stepwell.core.check.CheckItem;
import org.stepwell.core.evidence.Help;
import org.stepwell.core.evidence.Kind;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.rotation.BlockPattern;
import org.stepwell.core.rotation.Station;
import org.stepwell.grouping.GroupingService;
import org.stepwell.grouping.Seating;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Place;
import org.stepwell.observation.ObservationService;
import org.stepwell.pacing.PacingService;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.privacy.FamilyRequest;
import org.stepwell.privacy.FamilyRequestService;
import org.stepwell.progression.ProgressionService;
import org.stepwell.review.ReviewService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.EnrolmentService;
import org.stepwell.roster.EnrolmentService.Entry;
import org.stepwell.roster.RosterService;

/** A class with one of each thing that has an id, by the names the methods of services give them. */
record World(Map<String, UUID> ids, String schoolKey) {
    static World nowhere() {
        return new World(Map.of(), "no-such-child");
    }

    /** The id a parameter of that name asks for; one that nothing has where the world has none. */
    UUID id(String name) {
        return ids.getOrDefault(name, UUID.randomUUID());
    }

    /** Makes one as the adult who is signed in on this thread. */
    static World make(ApplicationContext context, UUID classId, UUID childId, LocalDate today) {
        ProgressionService progressions = context.getBean(ProgressionService.class);
        String code = progressions.choices().getFirst();
        progressions.provide(code);
        UUID unit = context.getBean(PacingService.class).startUnit(classId, code, "Tens", today);
        ChildRow child = context.getBean(RosterService.class).child(childId);
        UUID look = UUID.randomUUID();
        context.getBean(ObservationService.class).record(List.of(new Look(look, OffsetDateTime.parse(
                today + "T00:00:01-06:00"), child.schoolKey(), "T05", "17", 3, Help.NONE, Kind.TABLE, "x", Set.of(), null,
                null, false, null)), true);
        UUID plan = context.getBean(PlanService.class).start(childId, true, new PlanTerms(today, "T05", 2, 4, 80,
                today.plusWeeks(8), "Ms. Okoro", 3, 20, today.plusWeeks(4), "ten frames"));
        UUID check = context.getBean(CheckService.class).create(classId, "Check", today,
                List.of(new CheckItem("i1", "T05", 3, "17", "17")));
        ReviewService reviews = context.getBean(ReviewService.class);
        reviews.keepAll(classId, reviews.open(classId).orElseThrow().left().stream().map(c -> c.row().childId())
                .toList());
        runBlock(context, classId, today);
        UUID talk = UUID.randomUUID();
        context.getBean(FamilyTalkService.class).add(childId, talk, today, "Counts buttons.", "", null);
        UUID review = reviews.close(classId, Map.of()).reviewId();
        UUID request = context.getBean(FamilyRequestService.class).ask(childId, FamilyRequest.Kind.INSPECT, today, "");
        return new World(Map.of("classId", classId, "toClass", classId, "childId", childId, "unitId", unit,
                "observationId", look, "planId", plan, "checkId", check, "reviewId", review, "requestId", request,
                "talkId", talk), child.schoolKey());
    }

    private static void runBlock(ApplicationContext context, UUID classId, LocalDate today) {
        Map<String, Place> places = new TreeMap<>();
        context.getBean(RosterService.class).children(classId).forEach(c -> places.put(c.schoolKey(),
                new Place(1, false, "")));
        context.getBean(GroupingService.class).save(classId, today, Seating.Kind.GROUPS, List.of(new Group(1, "T05", "", false)),
                places);
        context.getBean(BlockService.class).setUp(classId, block());
    }

    /** A block on each day of the week. */
    static BlockPattern block() {
        return new BlockPattern(List.of(new Station("Teacher table", "", ""), new Station("Building", "", "")), 10, 1,
                LocalTime.of(9, 30), Arrays.stream(DayOfWeek.values()).collect(Collectors.toMap(d -> d, d -> 2)),
                new TreeMap<>());
    }

    /** A child added to a class by the adult who is signed in on this thread. */
    static UUID child(ApplicationContext context, UUID classId, String name) {
        return context.getBean(EnrolmentService.class).add(classId, new Entry("", name, "", ""), null);
    }
}
