package org.stepwell;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.InvocationTargetException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stepwell.RightsTest.Offered;
import org.stepwell.core.progression.Progression;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Right;
import org.stepwell.privacy.Right.Reach;
import org.stepwell.privacy.Right.Who;
import org.stepwell.roster.RosterService;
import org.stepwell.tier.ClassPicture;

/**
 * Everybody calls every service method there is, with the ids of what they may see, of what they may
 * not, and of nothing at all; the answers are compared with the table of rights. Each call is rolled back.
 */
class RightsWalkTest extends InTwoDistricts {
    private static final List<Reach> BY_ID = List.of(Reach.CHILD, Reach.PART, Reach.CLASS);

    /** These act on what no world holds (a look that came too late, a child who has left); their own tests show them work. */
    private static final Set<String> NOTHING_TO_ACT_ON = Set.of("ObservationService.decideWaiting", "EnrolmentService.back");

    /** A school's id of a child is taken or free in the whole district ({@link Right#ASK_KEY}), which must be said. */
    private static final Set<String> SAYS_TAKEN = Set.of("RosterService.addChild");

    /**
     * What a call came to.
     *
     * @param said the answer or the refusal, without ids
     * @param nothing whether it was refused or held nothing
     * @param refused whether it was refused as not visible
     * @param writes rows it wrote
     */
    private record Outcome(String said, boolean nothing, boolean refused, long writes) {}

    private Outcome call(Offered offered, World first, World rest) {
        Object[] given = arguments.of(offered.method().getParameters(), first, rest);
        return transaction.execute(status -> {
            long before = written();
            Outcome outcome;
            try {
                Object answer = offered.method().invoke(offered.bean(), given);
                outcome = new Outcome(plain(String.valueOf(answer)), empty(answer)
                        && offered.method().getReturnType() != void.class, false, 0);
            } catch (InvocationTargetException thrown) {
                Throwable why = thrown.getCause();
                outcome = new Outcome(plain(String.valueOf(why)), why instanceof NotVisible
                        || why.getClass().getName().startsWith("org.stepwell.")
                        || why instanceof IllegalArgumentException
                        || why instanceof IllegalStateException, why instanceof NotVisible, 0);
            } catch (IllegalAccessException closed) {
                throw new AssertionError(closed);
            }
            long writes = status.isRollbackOnly() ? 0 : written() - before;
            status.setRollbackOnly();
            return new Outcome(outcome.said(), outcome.nothing(), outcome.refused(), writes);
        });
    }

    private long written() {
        return jdbc.sql("select coalesce(sum(n_tup_ins + n_tup_upd + n_tup_del), 0) from pg_stat_xact_user_tables")
                .query(Long.class).single();
    }

    private static String plain(String text) {
        return text.replaceAll("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f-]{22}", "id").replaceAll("@[0-9a-f]{4,}", "")
                .replaceAll("code=[^,]*", "code");
    }

    private static boolean empty(Object answer) {
        return switch (answer) {
            case null -> true;
            case Optional<?> maybe -> maybe.isEmpty();
            case Collection<?> many -> many.isEmpty();
            case Map<?, ?> many -> many.isEmpty();
            case Boolean yes -> !yes;
            case Progression progression -> progression.skills().isEmpty();
            case ClassPicture picture -> picture.children().isEmpty() && picture.looks().isEmpty();
            default -> false;
        };
    }

    private void compare(Who who, Right right, Offered offered, List<String> wrong) {
        String what = who + " " + offered.claim() + ": ";
        as(who);
        boolean named = Arrays.stream(offered.method().getParameters()).anyMatch(p -> p.getType() == UUID.class
                || p.getName().equals("schoolKey") || p.getName().equals("child") || p.getName().equals("children"));
        if (!named) {
            return;
        }
        Outcome absent = call(offered, World.nowhere(), World.nowhere());
        for (World world : hidden(who, right.reach())) {
            Outcome hidden = call(offered, world, world);
            if (!hidden.nothing() || hidden.writes() > 0) {
                wrong.add(what + "reaches what is hidden: " + hidden);
            } else if (!hidden.equals(absent)) {
                wrong.add(what + "hidden and absent differ: " + hidden + " / " + absent);
            }
        }
        if (!right.who().contains(who)) {
            Outcome own = call(offered, shared, shared);
            if (!own.nothing() || own.writes() > 0) {
                wrong.add(what + "is not theirs, and it is done: " + own);
            }
            return;
        }
        if (!NOTHING_TO_ACT_ON.contains(offered.claim()) && call(offered, shared, shared).refused()) {
            wrong.add(what + "is theirs, and it is refused");
        }
        if (offered.method().getParameterCount() > 1 && !SAYS_TAKEN.contains(offered.claim())) {
            Outcome mixed = call(offered, shared, World.nowhere());
            for (World world : hidden(who, Reach.PART)) {
                Outcome crossed = call(offered, shared, world);
                if (!crossed.equals(mixed)) {
                    wrong.add(what + "an own id opens the way to a hidden one: " + crossed + " / " + mixed);
                }
            }
        }
    }

    private List<String> walk(List<Offered> services) {
        List<String> wrong = new ArrayList<>();
        for (Offered offered : services) {
            Right right = Right.of(offered.claim()).orElse(Right.KEEP_CLASS);
            if (BY_ID.contains(right.reach())) {
                for (Who who : Who.values()) {
                    compare(who, right, offered, wrong);
                }
            }
        }
        return wrong;
    }

    @Test
    void everyServiceAnswersEverybodyAsTheTableSays() {
        List<Offered> services = RightsTest.services(context);
        assertThat(services.stream().filter(o -> BY_ID.contains(Right.of(o.claim()).orElseThrow().reach())).count())
                .isGreaterThan(70);
        assertThat(walk(services)).isEmpty();
    }

    /** A service whose author forgot to ask who is calling is found, for everybody it lets through. */
    @Test
    void aMissingCheckIsFound() throws NoSuchMethodException {
        Forgetful planted = new Forgetful(jdbc);
        List<String> wrong = walk(List.of(new Offered(planted, Forgetful.class.getMethod("names", UUID.class))));
        assertThat(wrong).anyMatch(w -> w.startsWith("TEACHER Forgetful.names: reaches what is hidden"))
                .anyMatch(w -> w.startsWith("SPECIALIST Forgetful.names")).anyMatch(w -> w.startsWith("ADMINISTRATOR"));
    }

    /** Planted: the district wall holds, and nothing else does. */
    public static final class Forgetful {
        private final JdbcClient jdbc;

        Forgetful(JdbcClient jdbc) {
            this.jdbc = jdbc;
        }

        /** Names of the children of whatever class. */
        public List<String> names(UUID classId) {
            return jdbc.sql("select given_name from child join enrolment using (district_id, child_id)"
                    + " where class_id = :class").param("class", classId).query(String.class).list();
        }
    }
}
