package org.stepwell.core.wording;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.stepwell.core.grouping.Contradiction;
import org.stepwell.core.grouping.SeatReason;
import org.stepwell.core.grouping.Wish;

/** Words for why a child sits where it sits, and for wishes that cannot be kept. */
public final class GroupingWording {
    private final GroupPhrases phrases;

    /** In a language. */
    public GroupingWording(Language language) {
        this.phrases = language == Language.ENGLISH ? new EnglishGroups() : new SpanishGroups();
    }

    /**
     * Why a child sits there: what it works on next and with how many. No tier, and no other child: a sentence in
     * which the id or name of another child would stand, even by chance, is left out.
     *
     * @param skill words for a skill's code
     * @param others ids and names of all other children
     */
    public String reason(SeatReason reason, UnaryOperator<String> skill, Collection<String> others) {
        List<String> sentences = new ArrayList<>();
        sentences.add(reason.focus() == null ? phrases.notSeen()
                : reason.step() == null ? phrases.next(skill.apply(reason.focus()))
                : phrases.next(skill.apply(reason.focus()), reason.step()));
        sentences.add(phrases.others(reason));
        sentences.add(phrases.company(reason.company()));
        reason.kept().forEach(kept -> sentences.add(phrases.kept(kept)));
        Pattern names = names(others);
        sentences.removeIf(s -> s.isEmpty() || names.matcher(s).find());
        return sentences.isEmpty() ? phrases.bare().stream().filter(s -> !names.matcher(s).find()).findFirst()
                .orElse("-") : String.join(" ", sentences);
    }

    /** Any of the names as whole words, whatever the case. */
    private static Pattern names(Collection<String> others) {
        String any = others.stream().filter(name -> !name.isBlank()).map(name -> Pattern.quote(name.strip()))
                .collect(java.util.stream.Collectors.joining("|"));
        return any.isEmpty() ? Pattern.compile("(?!)") : Pattern.compile("(?<![\\p{L}\\p{N}])(?:" + any
                + ")(?![\\p{L}\\p{N}])", Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    }

    /**
     * A wish in a few words.
     *
     * @param name what a child is called
     */
    public String wish(Wish wish, UnaryOperator<String> name) {
        return switch (wish) {
            case Wish.Apart w -> phrases.apart(name.apply(w.one()), name.apply(w.other()));
            case Wish.Together w -> phrases.together(name.apply(w.one()), name.apply(w.other()));
            case Wish.InGroup w -> phrases.inGroup(name.apply(w.child()), w.group());
            case Wish.AwayAt w -> phrases.away(name.apply(w.child()), w.rotation());
            case Wish.WithSecondAdult w -> phrases.withSecondAdult(name.apply(w.child()));
        };
    }

    /**
     * What cannot be, with every child it is about named.
     *
     * @param name what a child is called
     */
    public String contradiction(Contradiction it, UnaryOperator<String> name) {
        List<String> names = it.children().stream().map(name).toList();
        String all = phrases.list(names);
        String wishes = String.join("; ", it.wishes().stream().map(w -> wish(w, name)).toList());
        return switch (it.kind()) {
            case UNKNOWN_CHILD -> phrases.unknown(names.getFirst());
            case NO_SUCH_GROUP -> phrases.noSuchGroup(wishes, it.room());
            case APART_FROM_ITSELF -> phrases.apartFromItself(names.getFirst());
            case BOTH -> phrases.both(names.get(0), names.get(1), names.size() == 2 ? "" : String.join("; ",
                    it.wishes().stream().filter(Wish.Together.class::isInstance).map(w -> wish(w, name)).toList()));
            case CHAIN_TOO_LONG -> phrases.tooLong(all, names.size(), it.room());
            case TWO_PLACES -> phrases.twoPlaces(wishes);
            case APART_IN_ONE_PLACE -> phrases.apartInOnePlace(names.get(0), names.get(1), it.room());
            case NO_PLACE -> phrases.noPlace(all, wishes);
            case GROUP_TOO_FULL -> phrases.tooFull(all, names.size(), it.room());
            case TOO_MANY_APART -> phrases.tooManyApart(all, it.room());
            case NOT_ALL -> phrases.notAll(wishes);
            case NONE_FOUND -> phrases.noneFound(wishes);
        };
    }
}
