package org.stepwell.block;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.stepwell.core.grouping.Wish;
import org.stepwell.grouping.Seating;
import org.stepwell.grouping.Seating.Group;
import org.stepwell.grouping.Seating.Kind;
import org.stepwell.grouping.Seating.Place;

/** Common practice, no source: a group of two is joined, and who is to sit apart stays apart. */
class JoiningTest {
    /** Group 1: a b c d, 2: e f g, 3: h i j, 4: k l m n; 3 and 4 work on one skill; group 5 is empty. */
    private static Seating groups() {
        Map<String, Place> places = new TreeMap<>();
        String[] all = {"abcd", "efg", "hij", "klmn"};
        for (int i = 0; i < all.length; i++) {
            for (String child : all[i].split("")) {
                places.put(child, new Place(i + 1, child.equals("h"), "why " + child));
            }
        }
        List<Group> groups = List.of(new Group(1, "T05", "", false), new Group(2, "T06", "", true),
                new Group(3, "T08", "34", false), new Group(4, "T08", "52", false), new Group(5, null, "", false));
        return new Seating(new UUID(0, 1), LocalDate.of(2026, 3, 2), Kind.GROUPS, groups, new TreeMap<>(places), "",
                Instant.EPOCH);
    }

    @Test
    void whoHasThreeThereStaysAndWhoHasTwoMayJoinTheSameSkillFirstThenTheSmaller() {
        assertThat(Joining.of(groups(), Set.of(), List.of())).isEmpty();
        assertThat(Joining.of(groups(), Set.of("h"), List.of())).containsExactly(new Joining(3, 2, List.of(4, 2, 1)));
        assertThat(Joining.of(groups(), Set.of("h", "i", "j"), List.of())).extracting(Joining::here).containsExactly(0);
    }

    @Test
    void nobodyMeetsWhoIsToSitApartAlsoWhenAwayNow() {
        assertThat(Joining.of(groups(), Set.of("h"), List.of(new Wish.Apart("h", "k"), new Wish.Together("i", "e"))))
                .containsExactly(new Joining(3, 2, List.of(2, 1)));
        assertThat(Joining.of(groups(), Set.of("h"), List.of(new Wish.Apart("k", "i"), new Wish.Apart("f", "i"),
                new Wish.Apart("i", "a"), new Wish.Apart("h", "j")))).containsExactly(new Joining(3, 2, List.of()));
    }

    @Test
    void numbersPinsAndReasonsStay() {
        assertThat(Joining.places(groups(), 3, 4)).containsEntry("h", new Place(4, true, "why h"))
                .containsEntry("k", new Place(4, false, "why k")).containsEntry("a", new Place(1, false, "why a"))
                .hasSize(14);
    }
}
