package org.stepwell.progression;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.stepwell.core.progression.Progression;
import org.stepwell.platform.security.CurrentAdult;
import org.stepwell.privacy.Access;
import org.stepwell.privacy.NotVisible;

/** The progression a class works on. */
@Service
@Transactional
public class ProgressionService {
    private static final Progression NONE = new Progression("none", List.of(), List.of());

    private final ProgressionStore store;
    private final Access access;
    private final CurrentAdult current;

    ProgressionService(ProgressionStore store, Access access, CurrentAdult current) {
        this.store = store;
        this.access = access;
        this.current = current;
    }

    /**
     * The newest version of the progression of the class's unit; one without skills where there is no unit yet or
     * the adult has no part in the class.
     */
    public Progression ofClass(UUID classId) {
        if (!access.hasPart(classId)) {
            return NONE;
        }
        return store.codeOfClass(classId).flatMap(code -> store.newest(code).map(v -> store.read(code,
                v.progressionId()))).orElse(NONE);
    }

    /**
     * The same, and before any unit the progression that a first unit would be on: the district's own, else the one
     * that comes with the program. For the first weeks, when children are met one by one.
     */
    public Progression toBegin(UUID classId) {
        Progression own = ofClass(classId);
        if (!own.skills().isEmpty() || !access.hasPart(classId)) {
            return own;
        }
        return store.codes().stream().sorted().findFirst().flatMap(code -> store.newest(code)
                .map(v -> store.read(code, v.progressionId()))).orElseGet(ShippedProgression::get);
    }

    /** Whether there is a progression of this code. */
    public boolean known(String code) {
        return store.newest(code).isPresent();
    }

    /** Codes a unit can be started on: those of the district and the one that comes with the program. */
    public List<String> choices() {
        return Stream.concat(store.codes().stream(), Stream.of(ShippedProgression.get().code())).distinct().sorted()
                .toList();
    }

    /**
     * Makes sure that a progression is there; the one that comes with the program is taken in at its first use.
     *
     * @return {@code false} when there is none of this code
     * @throws NotVisible when the adult has no class of their own, such as a specialist
     */
    public boolean provide(String code) {
        if (known(code)) {
            return true;
        }
        boolean shipped = ShippedProgression.get().code().equals(code);
        if (shipped) {
            importProgression(ShippedProgression.get());
        }
        return shipped;
    }

    /**
     * Takes a progression; the same content as the newest version changes nothing. It holds for every class of the
     * district that works on it.
     *
     * @return the version that holds now
     * @throws NotVisible when the adult has no class of their own, such as a specialist
     */
    public int importProgression(Progression progression) {
        if (access.classes().isEmpty()) {
            throw new NotVisible();
        }
        Optional<ProgressionStore.Version> newest = store.newest(progression.code());
        if (newest.isPresent()
                && store.read(progression.code(), newest.get().progressionId()).equals(progression)) {
            return newest.get().version();
        }
        int version = newest.map(v -> v.version() + 1).orElse(1);
        store.add(current.get().districtId(), progression, version);
        return version;
    }
}
