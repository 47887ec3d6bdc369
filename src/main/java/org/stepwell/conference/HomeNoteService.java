package org.stepwell.conference;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.EffectiveLooks;
import org.stepwell.core.evidence.SkillEstimate;
import org.stepwell.core.progression.Progression;
import org.stepwell.core.wording.Language;
import org.stepwell.core.wording.home.HomeDrafter;
import org.stepwell.core.wording.home.HomeEvidence;
import org.stepwell.core.wording.home.HomeNote;
import org.stepwell.core.wording.home.HomeNote.Part;
import org.stepwell.core.wording.home.WordGuard.Found;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Pages that go home: drafted from the looks, edited and approved by an adult, never sent by themselves. */
@Service
@Transactional
public class HomeNoteService {
    private static final int WEEKS_TO_NEXT = 4;
    private static final int WEEKS_BACK = 10;
    /** The longest sentence or paragraph that a part may hold, in characters. */
    public static final int LONGEST = 600;

    private final HomeNoteStore store;
    private final RosterService roster;
    private final TierService tiers;
    private final PageGuard guard;
    private final Access access;
    private final AccessRecordService record;
    private final CurrentAdult current;
    private final JsonMapper json;

    HomeNoteService(HomeNoteStore store, RosterService roster, TierService tiers, PageGuard guard,
            Access access, AccessRecordService record, CurrentAdult current, JsonMapper json) {
        this.store = store;
        this.roster = roster;
        this.tiers = tiers;
        this.guard = guard;
        this.access = access;
        this.record = record;
        this.current = current;
        this.json = json;
    }

    /**
     * A fresh draft from what was seen.
     *
     * @throws org.stepwell.privacy.NotVisible when the child may not be seen
     */
    public HomeNote draft(UUID childId, Language language) {
        access.requirePart(childId, Access.Part.NOTES);
        ChildRow child = roster.child(childId);
        ClassPicture picture = tiers.picture(child.classId());
        OneChild one = picture.children().stream().filter(c -> c.row().childId().equals(childId)).findFirst()
                .orElseThrow(org.stepwell.privacy.NotVisible::new);
        LocalDate today = current.today();
        Map<String, Integer> steps = new TreeMap<>();
        one.picture().skills().values().stream().filter(SkillEstimate::seen)
                .forEach(estimate -> steps.put(estimate.skill(), estimate.step()));
        LocalDate last = store.lastApproved(childId);
        LocalDate since = last == null || !last.isBefore(today) ? today.minusWeeks(WEEKS_BACK) : last.plusDays(1);
        return HomeDrafter.draft(new HomeEvidence(child.givenName(),
                EffectiveLooks.of(picture.looks(), picture.progression(), today).of(child.schoolKey()),
                picture.progression(), working(picture, steps), steps, since, today, today.plusWeeks(WEEKS_TO_NEXT),
                roster.otherNames(childId)), language);
    }

    /** Skills due now in the order of the progression, those with most room to the expected step first. */
    private static List<String> working(ClassPicture picture, Map<String, Integer> steps) {
        List<String> order = picture.progression().skills().stream().map(Progression.Skill::code).toList();
        List<String> due = new ArrayList<>(picture.due().keySet().stream()
                .sorted(java.util.Comparator.comparingInt(order::indexOf)).toList());
        due.sort(java.util.Comparator.comparingInt(skill -> steps.getOrDefault(skill, 0)
                - picture.due().getOrDefault(skill, 0)));
        return due.isEmpty() ? order : due;
    }

    /** Whether this adult may read notes on the child: a child can be shared without them. */
    public boolean mayRead(UUID childId) {
        return access.children(Access.Part.NOTES).contains(childId);
    }

    /** The newest kept version, if any. */
    public Optional<KeptNote> newest(UUID childId, Language language) {
        return versions(childId, language).stream().findFirst();
    }

    /** Every kept version, newest first. */
    public List<KeptNote> versions(UUID childId, Language language) {
        access.requirePart(childId, Access.Part.NOTES);
        return store.versions(childId, language).stream().map(row -> new KeptNote(row.version(), row.approved(),
                row.on(), read(row.parts(), language), words(json.readTree(row.confirmed())), row.by(), row.at()))
                .toList();
    }

    /** Whether the other language was kept later, so that this one may say something older. */
    public boolean outOfDate(UUID childId, Language language) {
        Optional<KeptNote> here = newest(childId, language);
        Language other = language == Language.ENGLISH ? Language.SPANISH : Language.ENGLISH;
        Optional<KeptNote> there = newest(childId, other);
        return there.isPresent() && (here.isEmpty() || here.get().at().isBefore(there.get().at()));
    }

    /** What a page holds that usually stays at school, or another child's name. */
    public List<Found> check(UUID childId, HomeNote note) {
        access.requirePart(childId, Access.Part.NOTES);
        return guard.find(roster.child(childId), note.language(), note.text());
    }

    /** Whether the adult has a part in the child's class, so that versions may be kept. */
    public boolean mayKeep(UUID childId) {
        return access.classes().contains(roster.child(childId).classId());
    }

    /**
     * Keeps a version.
     *
     * @param basedOn version the adult started from; 0 when there was none
     * @param approve whether the adult stands behind it now
     * @param confirmed words found by {@link #check} that the adult said are meant
     * @return the words that keep it from being approved; empty when it was kept
     * @throws IllegalArgumentException in words for the adult, when somebody else kept a version meanwhile or a part is
     *     too long
     * @throws org.stepwell.privacy.NotVisible when the adult has no part in the class
     */
    public List<Found> keep(UUID childId, HomeNote note, int basedOn, boolean approve, List<String> confirmed) {
        ChildRow child = roster.child(childId);
        access.requireClass(child.classId());
        if (note.parts().values().stream().flatMap(List::stream).anyMatch(s -> s.length() > LONGEST)) {
            throw new IllegalArgumentException("too-long");
        }
        List<Found> open = check(childId, note).stream().filter(f -> !confirmed.contains(f.text())).toList();
        if (approve && !open.isEmpty()) {
            return open;
        }
        SignedIn adult = current.get();
        if (!store.add(adult.districtId(), childId, note.language(), basedOn + 1, approve, current.today(),
                write(note), json.writeValueAsString(confirmed), adult.adultId())) {
            throw new IllegalArgumentException("kept-meanwhile");
        }
        return List.of();
    }

    /**
     * The page as it goes home: the last approved version, else the newest draft, else a fresh one, marked as draft.
     * Written down in the record of the child.
     */
    public HomePage page(UUID childId, Language language) {
        HomePage page = newest(roster.child(childId), language);
        record.seen(childId, Seen.NOTE_PRINT);
        return page;
    }

    private HomePage newest(ChildRow child, Language language) {
        UUID childId = child.childId();
        List<KeptNote> kept = versions(childId, language);
        Optional<KeptNote> approved = kept.stream().filter(KeptNote::approved).findFirst();
        String className = roster.classes().stream().filter(c -> c.classId().equals(child.classId()))
                .map(org.stepwell.roster.Classroom::name).findFirst().orElse("");
        if (approved.isPresent()) {
            KeptNote note = approved.get();
            return new HomePage(child.givenName(), className, note.by(), note.on(), false, note.note(),
                    roster.otherNames(childId));
        }
        @Nullable KeptNote newest = kept.isEmpty() ? null : kept.getFirst();
        return new HomePage(child.givenName(), className, newest == null ? current.get().name() : newest.by(),
                newest == null ? current.today() : newest.on(), true,
                newest == null ? draft(childId, language) : newest.note(), roster.otherNames(childId));
    }

    private String write(HomeNote note) {
        Map<String, Object> all = new TreeMap<>();
        note.parts().forEach((part, sentences) -> all.put(part.name(), sentences));
        all.put("FIRSTS", note.firsts().stream().map(LocalDate::toString).toList());
        return json.writeValueAsString(all);
    }

    private HomeNote read(String parts, Language language) {
        JsonNode all = json.readTree(parts);
        Map<Part, List<String>> read = new EnumMap<>(Part.class);
        Arrays.stream(Part.values()).forEach(part -> read.put(part, words(all.path(part.name()))));
        return new HomeNote(language, read, words(all.path("FIRSTS")).stream().map(LocalDate::parse).toList());
    }

    private static List<String> words(JsonNode array) {
        return array.valueStream().map(JsonNode::stringValue).toList();
    }
}
