package org.stepwell.core.grouping;

import java.util.List;

/**
 * Wishes that cannot be kept.
 *
 * @param kind what is wrong with them
 * @param children those it is about, in order; for {@link Kind#BOTH} and {@link Kind#TWO_PLACES} first the two ends
 * @param wishes the wishes that together make it impossible; leaving out any one of them would mend it
 * @param room how many places or groups there are, or the number of the group it is about; 0 where it says nothing
 */
public record Contradiction(Kind kind, List<String> children, List<Wish> wishes, int room) {
    /** Copies the lists. */
    public Contradiction {
        children = List.copyOf(children);
        wishes = List.copyOf(wishes);
    }

    /** What is wrong. */
    public enum Kind {
        /** A wish names a child who is not in the class. */
        UNKNOWN_CHILD,
        /** A wish names a group that there is not; room: how many there are. */
        NO_SUCH_GROUP,
        /** A child is to be apart from itself. */
        APART_FROM_ITSELF,
        /** Two children are to be both together and apart; between them others who are to be with both. */
        BOTH,
        /** More children are to be together than a group holds; room: the size of the largest group. */
        CHAIN_TOO_LONG,
        /** One child, or children who are to be together, with places in two groups. */
        TWO_PLACES,
        /** Two children who are to be apart have their places in one group; room: its number. */
        APART_IN_ONE_PLACE,
        /** No group is left for a child, or for children who are to be together. */
        NO_PLACE,
        /** More children have their places in a group than it holds; room: the size of the largest group. */
        GROUP_TOO_FULL,
        /** More children are to be apart from each other than there are groups; room: how many there are. */
        TOO_MANY_APART,
        /** Each wish can be kept, all of them cannot: every way was tried. */
        NOT_ALL,
        /** No way to keep all of them was found, though not every way was tried. */
        NONE_FOUND
    }
}
