package org.stepwell.observation;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.evidence.Look;
import org.stepwell.core.problem.Problem;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.RosterService;

/** Takes looks in and gives them back, for children the signed-in adult may see. */
@Service
@Transactional
public class ObservationService {
    /** Words of a look stored for a child the adult no longer sees. */
    private static final Problem WAITS = Problem.of("look.waits");

    private final ObservationStore store;
    private final RosterService roster;
    private final Access access;
    private final AccessRecordService record;
    private final CurrentAdult current;
    private final Clock clock;

    ObservationService(ObservationStore store, RosterService roster, Access access, AccessRecordService record,
            CurrentAdult current, Clock clock) {
        this.store = store;
        this.roster = roster;
        this.access = access;
        this.record = record;
        this.current = current;
        this.clock = clock;
    }

    /** What became of one look. */
    public enum Outcome {
        /** In the store from now on. */
        STORED,
        /** Was in the store already with the same content. */
        DUPLICATE,
        /** Not stored; the reason says why. */
        REFUSED
    }

    /**
     * What became of one look.
     *
     * @param reason what is wrong, or what is special about a stored one; {@code null} when nothing is to be said
     */
    public record Taken(Outcome outcome, @Nullable Problem reason) {}

    /**
     * Stores looks, each once for ever: the same id with the same content is a duplicate, with other content refused.
     * One refused look holds up no other.
     *
     * @param ownName whether the signed-in adult is the observer of all of them; else the file's word stands
     * @return in order, one for each
     */
    public List<Taken> record(List<Look> looks, boolean ownName) {
        Map<String, ChildRow> children = visible();
        Map<String, Optional<Instant>> erased = erased(looks);
        List<Taken> taken = new ArrayList<>();
        for (Look look : looks) {
            taken.add(record(ownName ? named(TabletClock.corrected(look)) : look, children,
                    erased.get(look.child())));
        }
        return taken;
    }

    /** What would become of a look that is offered. */
    public enum Foresight {
        /** It would be stored. */
        NEW,
        /** It would be stored and wait for the class's teacher: the adult no longer sees the child. */
        WAITS,
        /** It is there already with the same content. */
        THERE,
        /** Its id is taken by a look with other content. */
        OTHER_CONTENT,
        /** No child of that id is known to the adult. */
        UNKNOWN_CHILD
    }

    /**
     * Tells what would become of looks, and stores none.
     *
     * @return in order, one for each
     */
    public List<Foresight> foresee(List<Look> looks) {
        Map<String, ChildRow> children = visible();
        Map<String, Optional<Instant>> erased = erased(looks);
        Map<UUID, Look> there = store.find(looks.stream().map(Look::id).toList(), current.get().zone()).stream()
                .collect(Collectors.toMap(line -> line.look().id(), ObservationLine::look));
        return looks.stream().map(look -> {
            UUID childId = Optional.ofNullable(children.get(look.child())).map(ChildRow::childId)
                    .orElseGet(() -> seenOn(inZone(look)));
            if (childId == null || tooLate(look, childId, erased.get(look.child()))) {
                return Foresight.UNKNOWN_CHILD;
            }
            Look before = there.get(look.id());
            if (before != null) {
                return before.equals(inZone(look)) ? Foresight.THERE : Foresight.OTHER_CONTENT;
            }
            return children.containsKey(look.child()) ? Foresight.NEW : Foresight.WAITS;
        }).toList();
    }

    private Map<String, ChildRow> visible() {
        return roster.children().stream().collect(Collectors.toMap(ChildRow::schoolKey, Function.identity(),
                (a, b) -> a));
    }

    /** The clock that looks written on the server carry. */
    public Clock clock() {
        return clock;
    }

    private Look named(Look look) {
        SignedIn adult = current.get();
        return new Look(look.id(), look.observedAt(), look.child(), look.skill(), look.task(), look.step(),
                look.help(), look.kind(), adult.signIn(), look.tags(), look.note(), look.replaces(),
                look.withdrawn(), look.clockOffsetMs());
    }

    private Taken record(Look offered, Map<String, ChildRow> children, Optional<Instant> erasedAt) {
        SignedIn adult = current.get();
        Look look = inZone(offered);
        ChildRow child = children.get(look.child());
        UUID childId = child == null ? seenOn(look) : child.childId();
        if (tooLate(look, childId, erasedAt)) {
            return new Taken(Outcome.REFUSED, Problem.of("look.erased", look.child(),
                    erasedAt.orElseThrow().atZone(adult.zone()).toLocalDate().toString()));
        }
        if (childId == null) {
            return new Taken(Outcome.REFUSED, Problem.of("look.no-child", look.child()));
        }
        if (!current.pass().map(pass -> roster.everIn(pass.classId(), childId)).orElse(true)) {
            return new Taken(Outcome.REFUSED, Problem.of("look.pass", look.child()));
        }
        if (store.add(adult.districtId(), childId, child == null ? null : child.classId(), look, adult.adultId(),
                child == null ? clock.instant() : null)) {
            return new Taken(Outcome.STORED, child == null ? WAITS
                    : TabletClock.ahead(look, clock.instant()) ? TabletClock.AHEAD : null);
        }
        Optional<ObservationLine> there = store.find(look.id(), adult.zone());
        return there.isPresent() && there.get().look().equals(look)
                ? new Taken(Outcome.DUPLICATE, null)
                : new Taken(Outcome.REFUSED, Problem.of("look.id-taken"));
    }

    /** When children were erased, by the ids that looks name. */
    private Map<String, Optional<Instant>> erased(List<Look> looks) {
        return looks.stream().map(Look::child).distinct().collect(Collectors.toMap(Function.identity(),
                access::erased));
    }

    /** Whether a look comes after the child was erased; the id may belong to a child entered anew since. */
    private static boolean tooLate(Look look, @Nullable UUID childId, Optional<Instant> erasedAt) {
        return erasedAt.isPresent()
                && (childId == null || look.observedAt().toInstant().isBefore(erasedAt.get()));
    }

    private @Nullable UUID seenOn(Look look) {
        return roster.idByKey(look.child()).filter(id -> access.childrenOn(look.day()).contains(id)).orElse(null);
    }

    private Look inZone(Look look) {
        return new Look(look.id(), look.observedAt().atZoneSameInstant(current.get().zone()).toOffsetDateTime(),
                look.child(), look.skill(), look.task(), look.step(), look.help(), look.kind(), look.observer(),
                look.tags(), look.note(), look.replaces(), look.withdrawn(), look.clockOffsetMs());
    }

    /**
     * Every look at a child, replaced and withdrawn ones too, oldest first.
     *
     * @throws NotVisible when the child may not be seen
     */
    public List<ObservationLine> looks(UUID childId) {
        access.requireChild(childId);
        return store.ofChildren(List.of(childId), current.get().zone());
    }

    /** Looks at children of the signed-in adult's classes that wait for somebody of the class to take or leave them. */
    public List<ObservationLine> undecided() {
        return store.undecided(ofOwnClasses(), current.get().zone());
    }

    /**
     * Takes a look that waits, so that it counts as of its own day, or leaves it out for good. The first word holds.
     *
     * @return whether this was the first word
     * @throws NotVisible when it is not for this adult to decide, or no look of that id waits
     */
    public boolean decideWaiting(UUID observationId, boolean take) {
        SignedIn adult = current.get();
        ObservationLine line = store.find(observationId, adult.zone()).orElseThrow(NotVisible::new);
        if (!line.waiting() || !ofOwnClasses().contains(line.childId())) {
            throw new NotVisible();
        }
        return store.decide(adult.districtId(), observationId, take, adult.adultId());
    }

    private List<UUID> ofOwnClasses() {
        return access.classes().stream().flatMap(room -> roster.children(room).stream()).map(ChildRow::childId)
                .distinct().toList();
    }

    /** Every look at the children of a class that counts or is part of a correction, oldest first. */
    public List<Look> ofClass(UUID classId) {
        List<UUID> children = roster.children(classId).stream().map(ChildRow::childId).toList();
        return store.ofChildren(children, current.get().zone()).stream().filter(line -> !line.waiting())
                .map(ObservationLine::look).toList();
    }

    /** The same to go out as a file; written down in the record of each child seen. */
    public List<Look> fileOfClass(UUID classId) {
        List<Look> looks = ofClass(classId);
        record.seen(roster.children(classId).stream().map(ChildRow::childId).toList(), Seen.LOOKS_FILE);
        return looks;
    }

    /** What {@link #find} finds, to go out over HTTP; written down in the record of each child in it. */
    public List<ObservationLine> findToGoOut(@Nullable String child, @Nullable String skill, @Nullable LocalDate from,
            @Nullable LocalDate to) {
        List<ObservationLine> found = find(child, skill, from, to);
        record.seen(found.stream().map(ObservationLine::childId).distinct().toList(), Seen.LOOKS_FILE);
        return found;
    }

    /** Looks at the children this adult may see, oldest first; each filter may be {@code null}. */
    public List<ObservationLine> find(@Nullable String child, @Nullable String skill, @Nullable LocalDate from,
            @Nullable LocalDate to) {
        List<UUID> children = roster.children().stream()
                .filter(c -> child == null || c.schoolKey().equals(child)).map(ChildRow::childId).distinct().toList();
        if (child != null && children.isEmpty()) {
            throw new NotVisible();
        }
        return store.ofChildren(children, current.get().zone()).stream()
                .filter(line -> skill == null || Objects.equals(line.look().skill(), skill))
                .filter(line -> from == null || !line.look().day().isBefore(from))
                .filter(line -> to == null || !line.look().day().isAfter(to)).toList();
    }

    /**
     * Writes a new look that stands in for an older one, or takes it back when {@code withdrawn}. The older one stays.
     *
     * @throws NotVisible when the older one may not be seen
     * @throws IllegalArgumentException when the older one was replaced already
     */
    public void replace(UUID observationId, @Nullable Integer step, org.stepwell.core.evidence.Help help,
            @Nullable String note, boolean withdrawn) {
        SignedIn adult = current.get();
        ObservationLine old = store.find(observationId, adult.zone()).orElseThrow(NotVisible::new);
        access.requireChild(old.childId());
        if (old.replacedBy() != null) {
            throw new Refused("look.corrected");
        }
        Look look = old.look();
        record(List.of(new Look(UUID.randomUUID(), look.observedAt().plusNanos(1000), look.child(), look.skill(),
                look.task(), withdrawn ? look.step() : step, withdrawn ? look.help() : help, look.kind(),
                look.observer(), look.tags(), withdrawn ? look.note() : note, look.id(), withdrawn, null)), false)
                .stream().filter(t -> t.outcome() == Outcome.REFUSED).findAny().ifPresent(t -> {
                    throw new IllegalStateException(String.valueOf(t.reason()));
                });
    }
}
