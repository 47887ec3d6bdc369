package org.stepwell.roster;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.transaction.support.TransactionTemplate;
import org.stepwell.platform.security.AccountService;
import org.stepwell.platform.security.DistrictScope;

/**
 * Lets adults in from the terminal of the machine, where nobody is signed in. The first one brings the school and the
 * class along; a new school is a district of its own.
 */
public final class Invitations {
    /** The sample's district; districts of real schools come after it. */
    static final int SAMPLE_DISTRICT = 1;
    private static final int LONGEST_NAME = 200;

    private final RosterStore store;
    private final AccountService accounts;
    private final TransactionTemplate transaction;
    private final Clock clock;

    /** @param dataSource of the run-time user */
    public Invitations(DataSource dataSource, Clock clock) {
        this.store = RosterStore.over(dataSource);
        this.accounts = AccountService.over(dataSource, clock);
        this.transaction = DistrictScope.transactions(dataSource);
        this.clock = clock;
    }

    /** What an adult may do. */
    public enum Role {
        /** Teaches the class. */
        TEACHER,
        /** Teaches it beside the teacher. */
        CO_TEACHER,
        /** Helps in it. */
        AIDE,
        /** Sees children by grants only. */
        SPECIALIST,
        /** Leads the school; belongs to no class. */
        LEAD
    }

    /**
     * Whom to let in.
     *
     * @param signIn name to sign in with, also the observer in files
     * @param name shown beside looks and decisions
     * @param className class to work in; {@code null} for a lead alone
     * @param newClass whether the class is to be made when the school has none of that name
     * @param school {@code null} when there is only one
     * @param timeZone of a school to be made, such as {@code America/Chicago}; else {@code null}
     */
    public record Invitation(String signIn, String name, Role role, @Nullable String className, boolean newClass,
            @Nullable String school, @Nullable String timeZone) {}

    /**
     * Makes the account.
     *
     * @return a one-time password, good for a week and for choosing an own one
     * @throws IllegalArgumentException saying what is wrong and how to mend it; then nothing was made
     */
    public String add(Invitation wish) {
        refuseBadNames(wish);
        if (accounts.taken(wish.signIn())) {
            throw new IllegalArgumentException(wish.signIn() + " has an account already. For a new one-time password:"
                    + " adult reset " + wish.signIn());
        }
        RosterStore.School school = school(wish);
        return Objects.requireNonNull(DistrictScope.in(school.districtId(), () -> transaction.execute(status -> {
            if (store.schools().stream().noneMatch(s -> s.schoolId().equals(school.schoolId()))) {
                store.addDistrict(school.districtId(), school.name(), false);
                store.addSchool(school.districtId(), school.schoolId(), school.name(), school.zone());
            }
            UUID adult = UUID.randomUUID();
            store.addAdult(school.districtId(), adult, school.schoolId(), wish.signIn(), wish.name(),
                    wish.role() == Role.LEAD);
            if (wish.role() != Role.LEAD) {
                LocalDate today = LocalDate.ofInstant(clock.instant(), ZoneId.of(school.zone()));
                store.addClassAdult(school.districtId(), classId(wish, school), adult,
                        wish.role().name().toLowerCase(Locale.ROOT), today);
            }
            return accounts.giveOneTime(school.districtId(), adult);
        })));
    }

    /** A new one-time password; the former password ends. Throws {@code IllegalArgumentException} for nobody. */
    public String reset(String signIn) {
        return accounts.reset(signIn).orElseThrow(() -> new IllegalArgumentException(
                "Nobody signs in as " + signIn + ". Check the name, or make the account: adult add"));
    }

    private static void refuseBadNames(Invitation wish) {
        if (!wish.signIn().matches("[^\\s\\p{Cntrl}]{1,100}")) {
            throw new IllegalArgumentException("A sign-in name has 1 to 100 characters without spaces.");
        }
        if (wish.name().isBlank() || wish.name().length() > LONGEST_NAME) {
            throw new IllegalArgumentException("--name needs the name that stands beside looks and decisions.");
        }
        if (wish.role() == Role.LEAD && wish.className() != null) {
            throw new IllegalArgumentException("A lead belongs to the school: leave --class out.");
        }
        if (wish.role() != Role.LEAD && (wish.className() == null || wish.className().isBlank())) {
            throw new IllegalArgumentException("--class needs the class this adult works in.");
        }
    }

    private RosterStore.School school(Invitation wish) {
        List<RosterStore.School> all = new ArrayList<>();
        for (int district : accounts.districts()) {
            all.addAll(Objects.requireNonNull(
                    DistrictScope.in(district, () -> transaction.execute(status -> store.schools()))));
        }
        String names = all.stream().map(RosterStore.School::name).collect(Collectors.joining(", "));
        if (wish.school() == null) {
            if (all.size() == 1) {
                return all.getFirst();
            }
            throw new IllegalArgumentException(all.isEmpty()
                    ? "There is no school yet. Name it: --school NAME --time-zone America/Chicago"
                    : "There are several schools; choose one by --school: " + names);
        }
        List<RosterStore.School> fitting = all.stream().filter(s -> s.name().equalsIgnoreCase(wish.school())).toList();
        if (fitting.size() > 1) {
            throw new IllegalArgumentException("More than one school has the name " + wish.school() + ".");
        }
        if (fitting.size() == 1) {
            if (wish.timeZone() != null && !wish.timeZone().equals(fitting.getFirst().zone())) {
                throw new IllegalArgumentException(wish.school() + " is there already, with the time zone "
                        + fitting.getFirst().zone() + ". Leave --time-zone out.");
            }
            return fitting.getFirst();
        }
        if (wish.timeZone() == null) {
            throw new IllegalArgumentException("There is no school " + wish.school()
                    + (all.isEmpty() ? "" : "; there is " + names)
                    + ". A new one needs its time zone too: --time-zone America/Chicago");
        }
        int district = Math.max(SAMPLE_DISTRICT, accounts.districts().stream().mapToInt(d -> d).max().orElse(0)) + 1;
        return new RosterStore.School(district, UUID.randomUUID(), wish.school(), zone(wish.timeZone()));
    }

    private static String zone(String text) {
        try {
            return EntryFault.zone("zone", text);
        } catch (EntryFault.Found unknown) {
            throw new IllegalArgumentException("\"" + text + "\" is no time zone like America/Chicago.");
        }
    }

    private UUID classId(Invitation wish, RosterStore.School school) {
        String name = Objects.requireNonNull(wish.className());
        List<Classroom> classes = store.classesOf(school.schoolId());
        return classes.stream().filter(c -> c.name().equalsIgnoreCase(name)).map(Classroom::classId).findFirst()
                .orElseGet(() -> {
                    if (!wish.newClass()) {
                        throw new IllegalArgumentException(school.name() + " has no class " + name
                                + (classes.isEmpty() ? "" : "; it has "
                                        + classes.stream().map(Classroom::name).collect(Collectors.joining(", ")))
                                + ". To make it, add --new-class.");
                    }
                    UUID made = UUID.randomUUID();
                    store.addClass(school.districtId(), made, school.schoolId(), name, "1");
                    return made;
                });
    }
}
