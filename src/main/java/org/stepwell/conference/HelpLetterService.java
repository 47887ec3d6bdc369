package org.stepwell.conference;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.problem.Refused;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.progression.Progression.Phrase;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HelpLetter;
import org.stepwell.core.wording.home.WordGuard.Found;
import org.stepwell.plan.Plan;
import org.stepwell.plan.PlanService;
import org.stepwell.plan.PlanTerms;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.progression.ProgressionService;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import tools.jackson.databind.json.JsonMapper;

/**
 * Letters that tell families of extra help: drafted from the plan, edited and approved by an adult of the class, never sent
 * by themselves.
 */
@Service
@Transactional
public class HelpLetterService {
    private static final int WEEKS_TO_HEAR = 4;

    private final HelpLetterStore store;
    private final RosterService roster;
    private final PlanService plans;
    private final ProgressionService progressions;
    private final PageGuard guard;
    private final Access access;
    private final AccessRecordService record;
    private final CurrentAdult current;
    private final JsonMapper json;

    HelpLetterService(HelpLetterStore store, RosterService roster, PlanService plans, ProgressionService progressions,
            PageGuard guard, Access access, AccessRecordService record, CurrentAdult current, JsonMapper json) {
        this.store = store;
        this.roster = roster;
        this.plans = plans;
        this.progressions = progressions;
        this.guard = guard;
        this.access = access;
        this.record = record;
        this.current = current;
        this.json = json;
    }

    /** The newest plan of extra help of a child, running or not; there may be none. */
    public Optional<UUID> planOf(UUID childId) {
        return newest(childId).map(Plan::planId);
    }

    private Optional<Plan> newest(UUID childId) {
        return plans.plans(childId).stream().filter(Plan::support).reduce((a, b) -> b);
    }

    /**
     * A fresh draft from the plan as it stands today, with the school's words that this adult used last.
     *
     * @throws NotVisible when the child or its plans may not be seen, or there is no plan of extra help
     */
    public HelpLetter draft(UUID childId, Language language) {
        ChildRow child = roster.child(childId);
        Plan plan = newest(childId).orElseThrow(NotVisible::new);
        LocalDate today = current.today();
        PlanTerms now = plan.on(today);
        LocalDate hear = now.reviewOn().isAfter(today) ? now.reviewOn() : today.plusWeeks(WEEKS_TO_HEAR);
        HelpLetter drafted = HelpLetter.draft(new HelpLetter.Facts(child.givenName(), plan.startedOn(), now.givenBy(),
                now.perWeek(), now.minutes(), hear, atHome(child, now, language), today, roster.otherNames(childId)),
                language);
        return new HelpLetter(language, drafted.lines(),
                store.lastSchoolText(current.get().adultId(), language).orElse(""));
    }

    private Optional<String> atHome(ChildRow child, PlanTerms terms, Language language) {
        Progression progression = progressions.ofClass(child.classId());
        int place = terms.start() >= 3 ? 3 : 1;
        return progression.phrases().stream().filter(p -> p.kind() == Phrase.Kind.HELP && p.code().equals("home_try")
                && p.skill().equals(terms.skill()) && p.language().equals(language.code())
                && Objects.equals(p.step(), place)).map(Phrase::text).findFirst();
    }

    /** Every kept version about the newest plan of extra help, newest first; empty when there is no plan. */
    public List<KeptLetter> versions(UUID childId, Language language) {
        return newest(childId).map(plan -> store.versions(plan.planId(), language).stream().map(row -> new KeptLetter(
                row.version(), row.approved(), row.on(), new HelpLetter(language, words(row.lines()), row.school()),
                words(row.confirmed()), row.by())).toList()).orElse(List.of());
    }

    /** What a letter holds that usually stays at school, or another child's name. */
    public List<Found> check(UUID childId, HelpLetter letter) {
        access.requirePart(childId, Access.Part.PLAN);
        return guard.find(roster.child(childId), letter.language(), letter.text());
    }

    /** Whether the adult has a part in the child's class, so that versions may be kept. */
    public boolean mayKeep(UUID childId) {
        return access.classes().contains(roster.child(childId).classId());
    }

    /**
     * Keeps a version about the newest plan of extra help.
     *
     * @param basedOn version the adult started from; 0 when there was none
     * @param approve whether the adult stands behind it now
     * @param confirmed words found by {@link #check} that the adult said are meant
     * @return the words that keep it from being approved; empty when it was kept
     * @throws Refused when somebody else kept a version meanwhile, or it is too long or empty
     * @throws NotVisible when the adult has no part in the class, or there is no plan
     */
    public List<Found> keep(UUID childId, HelpLetter letter, int basedOn, boolean approve, List<String> confirmed) {
        access.requireClass(roster.child(childId).classId());
        Plan plan = newest(childId).orElseThrow(NotVisible::new);
        if (letter.lines().isEmpty() || letter.text().length() > HomeNoteService.LONGEST * 10
                || letter.school().length() > HomeNoteService.LONGEST * 6) {
            throw new Refused("letter.length");
        }
        List<Found> open = check(childId, letter).stream().filter(f -> !confirmed.contains(f.text())).toList();
        if (approve && !open.isEmpty()) {
            return open;
        }
        SignedIn adult = current.get();
        if (!store.add(adult.districtId(), childId, plan.planId(), letter.language(), basedOn + 1, approve,
                current.today(), json.writeValueAsString(letter.lines()), letter.school().strip(),
                json.writeValueAsString(confirmed), adult.adultId())) {
            throw new Refused("kept.meanwhile");
        }
        return List.of();
    }

    /**
     * The letter as it goes home: the last approved version, else the newest draft, else a fresh one, marked as draft.
     * Written down in the record of the child.
     *
     * @throws NotVisible when there is no plan of extra help, or it may not be seen
     */
    public LetterPage page(UUID childId, Language language) {
        ChildRow child = roster.child(childId);
        List<KeptLetter> kept = versions(childId, language);
        Optional<KeptLetter> shown = kept.stream().filter(KeptLetter::approved).findFirst()
                .or(() -> kept.stream().findFirst());
        String className = roster.classes().stream().filter(c -> c.classId().equals(child.classId()))
                .map(org.stepwell.roster.Classroom::name).findFirst().orElse("");
        LetterPage page = new LetterPage(child.givenName(), className,
                shown.map(KeptLetter::by).orElseGet(() -> current.get().name()),
                shown.map(KeptLetter::on).orElseGet(current::today), shown.map(k -> !k.approved()).orElse(true),
                shown.map(KeptLetter::letter).orElseGet(() -> draft(childId, language)), roster.otherNames(childId));
        record.seen(childId, Seen.LETTER_PRINT);
        return page;
    }

    /** Of these children, those who get extra help while no letter about it was approved. */
    public Set<UUID> withoutWord(Collection<UUID> children) {
        Set<UUID> seen = access.children(Access.Part.PLAN);
        return Set.copyOf(store.withoutWord(children.stream().filter(seen::contains).toList(), current.today()));
    }

    private List<String> words(String array) {
        return json.readTree(array).valueStream().map(tools.jackson.databind.JsonNode::stringValue).toList();
    }
}
