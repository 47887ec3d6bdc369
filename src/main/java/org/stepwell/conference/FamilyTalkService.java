package org.stepwell.conference;

import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;
import org.stepwell.roster.RosterService;

/** What families said and what was agreed with them; what was agreed comes up again on its day until it is done. */
@Service
@Transactional
public class FamilyTalkService {
    private static final int LONGEST = 4000;

    private final FamilyTalkStore store;
    private final RosterService roster;
    private final Access access;
    private final CurrentAdult current;

    FamilyTalkService(FamilyTalkStore store, RosterService roster, Access access, CurrentAdult current) {
        this.store = store;
        this.roster = roster;
        this.access = access;
        this.current = current;
    }

    /** Talks about a child, newest first. */
    public List<FamilyTalk> talks(UUID childId) {
        access.requirePart(childId, Access.Part.NOTES);
        return store.talks(Set.of(childId));
    }

    /**
     * Writes a talk down.
     *
     * @param talkId made by the caller; the same id again does nothing
     * @param again day on which to look at what was agreed; {@code null} for none
     * @throws Refused when nothing was said or agreed, a text is too long, the talk lies ahead, or the day to look again
     *     does not come after it
     * @throws NotVisible when the adult has no part in the class
     */
    public void add(UUID childId, UUID talkId, LocalDate on, String said, String agreed, @Nullable LocalDate again) {
        SignedIn adult = writer(childId);
        if (said.isBlank() && agreed.isBlank()) {
            throw new Refused("talk.empty");
        }
        if (said.length() > LONGEST || agreed.length() > LONGEST) {
            throw new Refused("talk.long");
        }
        if (on.isAfter(current.today())) {
            throw new Refused("talk.ahead");
        }
        if (again != null && !again.isAfter(on)) {
            throw new Refused("talk.again");
        }
        store.add(adult.districtId(), new FamilyTalk(talkId, childId, on, said.strip(), agreed.strip(), again, 0,
                adult.name()), adult.adultId());
    }

    /**
     * Moves what was agreed to another day, or says that it is done.
     *
     * @param steps of the talk as the adult saw it; when somebody changed it since, that stands
     * @param again a day after today; {@code null} for done
     */
    public void settle(UUID childId, UUID talkId, int steps, @Nullable LocalDate again) {
        SignedIn adult = writer(childId);
        FamilyTalk talk = talks(childId).stream().filter(t -> t.talkId().equals(talkId)).findFirst()
                .orElseThrow(NotVisible::new);
        if (again != null && !again.isAfter(current.today())) {
            throw new Refused("talk.again");
        }
        if (talk.steps() == steps) {
            store.step(adult.districtId(), talkId, steps + 1, again, adult.adultId());
        }
    }

    /** Whether this adult may write talks about the child down. */
    public boolean mayWrite(UUID childId) {
        return access.classes().contains(roster.child(childId).classId());
    }

    /** What was agreed about these children and is to be looked at by today, oldest day first. */
    public List<FamilyTalk> due(Collection<UUID> children) {
        Set<UUID> seen = access.children(Access.Part.NOTES);
        LocalDate today = current.today();
        return store.talks(children.stream().filter(seen::contains).toList()).stream()
                .filter(talk -> talk.againOn() != null && !talk.againOn().isAfter(today))
                .sorted(java.util.Comparator.comparing(FamilyTalk::againOn)).toList();
    }

    private SignedIn writer(UUID childId) {
        access.requireClass(roster.child(childId).classId());
        return current.get();
    }
}
