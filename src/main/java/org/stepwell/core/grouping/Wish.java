package org.stepwell.core.grouping;

import java.util.List;

/** What the adult asks of a grouping. A wish is kept or named as impossible, never dropped. */
public sealed interface Wish {
    /** The children it names. */
    List<String> children();

    /** The two are not to sit in one group. */
    record Apart(String one, String other) implements Wish {
        @Override
        public List<String> children() {
            return List.of(one, other);
        }
    }

    /** The two are to sit in one group. */
    record Together(String one, String other) implements Wish {
        @Override
        public List<String> children() {
            return List.of(one, other);
        }
    }

    /** The child has its place in this group, counted from 1. */
    record InGroup(String child, int group) implements Wish {
        @Override
        public List<String> children() {
            return List.of(child);
        }
    }

    /** The child is away in this rotation, counted from 1, and must not lose its turn at the teacher table. */
    record AwayAt(String child, int rotation) implements Wish {
        @Override
        public List<String> children() {
            return List.of(child);
        }
    }

    /** The child is to sit in a group that meets the second adult. */
    record WithSecondAdult(String child) implements Wish {
        @Override
        public List<String> children() {
            return List.of(child);
        }
    }
}
