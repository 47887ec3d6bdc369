package org.stepwell.privacy;

import static org.stepwell.privacy.Right.Reach.ANYONE;
import static org.stepwell.privacy.Right.Reach.CHILD;
import static org.stepwell.privacy.Right.Reach.CLASS;
import static org.stepwell.privacy.Right.Reach.HELD;
import static org.stepwell.privacy.Right.Reach.INSIDE;
import static org.stepwell.privacy.Right.Reach.OWN;
import static org.stepwell.privacy.Right.Reach.PART;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Who may do what to what. Each row claims the service methods, routes and screens that do it, by name:
 * {@code RosterService.child}, {@code GET /api/table}, {@code screen plan/:child}. What no row claims is nobody's, and a
 * test fails on it; the test also walks all of it as everybody and compares.
 */
public enum Right {
    /** Static pages, signing in and out, the health of the server: nothing of a child is in them. */
    ENTER("door", ANYONE, "GET /login", "GET /set-up", "GET /table", "GET /table/", "GET /table/**", "GET /look/**",
            "GET /check/**", "GET /sign-in/**", "POST /login/first", "POST /login/password", "GET /login/set-up",
            "POST /login/set-up", "POST /login/invited", "any /error", "GET /**", "GET /webjars/**",
            "GET /actuator/health", "GET /actuator/health/**", "GET /actuator"),
    /** One's own account, tablets and keys. */
    KEEP_ACCOUNT("account", OWN, "TabletPassService.mine", "TabletPassService.revoke", "GET /api/table/passes",
            "DELETE /api/table/passes/{pass}", "SealKeyService.keys", "ObservationService.clock", "screen tablets",
            "SessionService.mine", "SessionService.events", "SessionService.end", "SessionService.endOthers",
            "screen sign-ins"),
    /** Whatever an adult sees is listed; who sees nothing gets an empty list. */
    LIST_OWN("class, child", OWN, "RosterService.classes", "RosterService.adults", "RosterService.children()", "RosterService.byKey",
            "RosterService.seesWhole", "RosterService.inSample", "RecordsService.kept", "screen records", "RetentionService.decides",
            "screen records/retention", "GET /api/children", "ReviewService.mine", "Access.classes",
            "Access.children", "Access.shared", "Access.childrenOn", "Access.hasPart", "ObservationService.undecided", "screen",
            "screen class-map", "screen suggestions", "screen groups", "screen block", "screen paper", "screen caseload", "CaseloadService.mine", "PlanService.missedTwice", "HelpLetterService.withoutWord", "FamilyTalkService.due", "screen groups/tomorrow", "screen files",
            "screen notes", "screen review", "screen unit", "screen unit-check", "screen coverage", "screen what-if",
            "screen sample", "screen conferences"),
    /** A class, as far as the children in it are seen. */
    SEE_PART("class", PART, "RosterService.children", "ObservationService.ofClass", "ObservationService.fileOfClass",
            "TierService.picture", "TierService.details", "TierService.askNow", "PacingService.unit", "ProgressionService.ofClass", "ProgressionService.toBegin",
            "LessonService.openTasks", "AfterHelpService.due", "LessonService.inHand", "LessonService.skillInHand", "BlockService.atTable",
            "GroupingService.seating", "WhatIfService.tried",
            "UnitReadiness.coverage", "GET /api/table", "GET /api/table/{classId}/clipboard.pdf",
            "PaperService.store"),
    /** One child: page, plan, looks, note. */
    SEE_CHILD("child", CHILD, "RosterService.child", "Access.requireChild", "ObservationService.looks",
            "ObservationService.find", "ObservationService.findToGoOut", "GET /api/observations",
            "TierService.decisions", "PlanService.plans", "PlanService.mayRead", "AfterHelpService.standing", "AfterHelpService.ended", "CaseloadService.comments", "HomeNoteService.mayRead",
            "Access.requirePart", "PlanService.running", "PlanService.mayWrite",
            "HomeNoteService.draft", "HomeNoteService.newest", "HomeNoteService.versions", "HomeNoteService.outOfDate",
            "HomeNoteService.check", "HomeNoteService.mayKeep", "HomeNoteService.page",
            "FamilyTalkService.talks", "FamilyTalkService.mayWrite", "screen talk/:child/:language", "HelpLetterService.planOf", "HelpLetterService.draft", "HelpLetterService.versions", "HelpLetterService.check",
            "HelpLetterService.mayKeep", "HelpLetterService.page", "GET /api/children/{child}/letter.pdf",
            "screen letter/:child/:language", "GET /api/children/{child}/note.pdf", "GET /api/children/{child}/report.pdf",
            "GET /api/children/{child}/report.csv", "AccessRecordService.readers", "AccessRecordService.mayRead",
            "AccessRecordService.seen", "FamilyRequestService.statements", "RecordsService.mayBundle", "screen child/:child/:skill?", "screen plan/:child",
            "screen notes/:child/:language"),
    /** Looks at a child, also with the pass of a tablet, and sessions of a plan. */
    RECORD("child", CHILD, "ObservationService.record", "ObservationService.foresee", "ObservationService.replace",
            "POST /api/observations", "TierService.recordConcern", "TierService.recordDose", "PlanService.log",
            "PlanService.takeBack", "CaseloadService.comment"),
    /** What is decided on a child by those who see its class whole. */
    DECIDE_CHILD("child", CLASS, "ScheduleService.arrived", "PlanService.start", "PlanService.change", "PlanService.end", "PlanTemplateService.save", "HomeNoteService.keep", "HelpLetterService.keep", "FamilyTalkService.add", "FamilyTalkService.settle",
            "ObservationService.decideWaiting", "AccessRecordService.lines", "AccessRecordService.csv",
            "GET /api/children/{child}/access.csv", "RecordsService.bundle",
            "FamilyRequestService.requests", "FamilyRequestService.ask", "GET /api/children/{child}/records.zip"),
    /** A class, seen whole. */
    KEEP_CLASS("class", CLASS, "ScheduleService.schedule", "ScheduleService.save", "ScheduleService.list",
            "ScheduleService.pages", "GET /api/conferences/{classId}/list.pdf", "GET /api/conferences/{classId}/notes.pdf",
            "Access.requireClass", "TierService.decide", "TierService.decideAll",
            "ReviewService.open", "ReviewService.choose", "ReviewService.keepAll", "ReviewService.close",
            "ReviewService.sealed", "ReviewService.compared", "ReviewService.print", "GET /api/reviews/{id}/review.pdf",
            "BlockService.picture", "BlockService.setUp", "BlockService.start", "BlockService.ways",
            "BlockService.lose", "BlockService.goOn", "ShareService.sharings", "ShareService.others", "ShareService.offered",
            "ShareService.share", "ShareService.end", "ShareService.handOver", "BlockService.absent",
            "BlockService.join", "GET /api/block/{classId}/sheet.pdf",
            "GroupingService.picture", "GroupingService.saved", "GroupingService.wish", "GroupingService.save", "GroupingService.history",
            "PacingService.startUnit", "PacingService.importPacing", "PacingService.importCalendar",
            "LessonService.plan", "LessonService.choose", "LessonService.addTasks", "LessonService.save",
            "LessonService.remove", "LessonService.fromDates", "UnitReadiness.prerequisites", "AccessRecordService.filed",
            "AccessRecordService.printed"),
    /** Who is in a class, and from when to when. */
    KEEP_ROSTER("class", CLASS, "RosterService.addChild", "RosterService.importRoster", "RosterService.export",
            "EnrolmentService.inClass", "EnrolmentService.left", "EnrolmentService.add", "EnrolmentService.correct",
            "EnrolmentService.end", "EnrolmentService.move", "EnrolmentService.back", "AdultService.adults",
            "AdultService.mayInvite"),
    /** Letting adults into a class and ending their access: teachers and leads. */
    LET_IN("class", CLASS, EnumSet.of(Who.TEACHER, Who.LEAD), "AdultService.open", "AdultService.invite",
            "AdultService.revoke", "AdultService.addKnown", "AdultService.end"),
    /** What becomes of the records on a child, also of one who left: leads of its school. */
    KEEP_RECORDS("child", CLASS, EnumSet.of(Who.LEAD), "Access.requireLead", "Access.leads",
            "FamilyRequestService.decides", "FamilyRequestService.happened", "ErasureService.preview",
            "ErasureService.erase"),
    /** How long the school keeps what; by no id, and never more than the lead's own school. */
    KEEP_PERIODS("school", OWN, EnumSet.of(Who.LEAD), "RetentionService.periods", "RetentionService.set",
            "RetentionService.dryRun", "RetentionService.erase", "RetentionService.runs"),
    /** Checks of a class, with the answers of all its children. */
    KEEP_CHECK("check", CLASS, "CheckService.checks", "CheckService.unitSkills", "CheckService.create",
            "CheckService.revision", "CheckService.saveItems", "CheckService.sheet", "CheckService.classOf",
            "CheckService.mark", "CheckService.restRight", "CheckService.sit", "CheckService.count",
            "CheckService.retake", "CheckService.earlierAccommodations", "CheckFiles.export", "CheckFiles.read",
            "CheckFiles.take", "CheckReport.results", "CheckReport.newestCounted", "GET /api/checks/{id}",
            "POST /api/checks/{id}/marks", "POST /api/checks/{id}/rest", "POST /api/checks/{id}/absent",
            "screen unit-check/:check/blueprint", "screen unit-check/:check/score/:entry?",
            "screen unit-check/:check/results"),
    /** Skills and words of a progression; they hold for the district and name no child. */
    KEEP_PROGRESSION("progression", OWN, "ProgressionService.known", "ProgressionService.choices",
            "ProgressionService.provide", "ProgressionService.importProgression"),
    /** Frames of plans; they hold for the adult's school and name no child. */
    KEEP_TEMPLATES("template", OWN, "PlanTemplateService.templates", "PlanTemplateService.rename",
            "PlanTemplateService.retire"),
    /** A pass for a tablet; the one route that makes it holds that the adult has a part in the class. */
    ISSUE_PASS("class", HELD, "TabletPassService.issue", "POST /api/table/pass"),
    /** Taking the sample out; the screen holds that the adult belongs to it and sees its class whole. */
    REMOVE_SAMPLE("sample", HELD, EnumSet.of(Who.TEACHER, Who.CO_TEACHER, Who.AIDE, Who.LEAD), "SampleRemoval.ready",
            "SampleRemoval.there", "SampleRemoval.remove"),
    /** Whether the district knows a school's id of a child: says that it is taken, nothing of whose it is. */
    ASK_KEY("child", OWN, "RosterService.idByKey", "Access.erased"),
    /** Steps of other services and of the terminal, with ids that were held already; no route and no screen calls them. */
    STEP("any", INSIDE, "RosterService.everIn", "RosterService.found", "RosterService.otherNames",
            "RosterService.addAdult", "PlanService.doses", "TierService.takeOver", "Access.grant", "Access.endGrants",
            "AccountService.endSessions", "AccountService.giveOneTime", "AccountService.reset", "AccountService.taken",
            "AccountService.districts", "AccountService.ready", "AccountService.anybody", "AccountService.known",
            "AccountService.setPassword", "SealKeyService.open"),
    /** A request that was refused is written down, whoever made it. */
    NOTE_DENIAL("child", OWN, "AccessRecordService.denied");

    /** Whose part it is. */
    public enum Who {
        /** Teaches the class. */
        TEACHER,
        /** Teaches it beside the teacher. */
        CO_TEACHER,
        /** Helps in it. */
        AIDE,
        /** Sees the children shared by a grant. */
        SPECIALIST,
        /** Sees the school. */
        LEAD,
        /** Keeps accounts; no child. */
        ADMINISTRATOR,
        /** Nobody who is signed in. */
        STRANGER
    }

    /** How far it goes. */
    public enum Reach {
        /** Open to all; holds nothing of a child. */
        ANYONE,
        /** The adult's own things and whatever the adult sees, without naming any. */
        OWN,
        /** A child the adult sees. */
        CHILD,
        /** A class of which the adult sees at least one child; limited to those. */
        PART,
        /** A class the adult sees whole. */
        CLASS,
        /** Held by the one route or screen that calls it. */
        HELD,
        /** Not reached from outside. */
        INSIDE
    }

    private final String object;
    private final Reach reach;
    private final Set<Who> who;
    private final List<String> claims;

    Right(String object, Reach reach, String... claims) {
        this(object, reach, usual(reach), claims);
    }

    Right(String object, Reach reach, Set<Who> who, String... claims) {
        this.object = object;
        this.reach = reach;
        this.who = Set.copyOf(who);
        this.claims = List.of(claims);
    }

    private static Set<Who> usual(Reach reach) {
        return switch (reach) {
            case ANYONE -> EnumSet.allOf(Who.class);
            case OWN -> EnumSet.complementOf(EnumSet.of(Who.STRANGER));
            case CHILD, PART, HELD -> EnumSet.of(Who.TEACHER, Who.CO_TEACHER, Who.AIDE, Who.SPECIALIST, Who.LEAD);
            case CLASS -> EnumSet.of(Who.TEACHER, Who.CO_TEACHER, Who.AIDE, Who.LEAD);
            case INSIDE -> EnumSet.noneOf(Who.class);
        };
    }

    /** Kind of thing it is done to. */
    public String object() {
        return object;
    }

    /** How far it goes. */
    public Reach reach() {
        return reach;
    }

    /** Who may, each within the reach. */
    public Set<Who> who() {
        return who;
    }

    /** Names of what does it. */
    public List<String> claims() {
        return claims;
    }

    /** The row that claims something. */
    public static Optional<Right> of(String claim) {
        for (Right right : values()) {
            if (right.claims.contains(claim)) {
                return Optional.of(right);
            }
        }
        return Optional.empty();
    }
}
