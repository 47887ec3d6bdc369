package org.stepwell.core.grouping;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.stepwell.core.grouping.Contradiction.Kind;

/** Contradictions that can be read off the wishes without searching; all of them, in a fixed order. */
final class PlainContradictions {
    private final GroupingTask task;
    private final List<Contradiction> found = new ArrayList<>();
    private final Map<String, List<Wish.Together>> bonds = new TreeMap<>();

    private PlainContradictions(GroupingTask task) {
        this.task = task;
    }

    static List<Contradiction> of(GroupingTask task) {
        PlainContradictions all = new PlainContradictions(ordered(task));
        all.names();
        if (all.found.isEmpty()) {
            all.pairs();
            all.blocks();
        }
        if (all.found.isEmpty()) {
            all.clique();
        }
        return all.found;
    }

    /** Wishes in an order of their own, and each once, so that the answer does not depend on how they came. */
    static GroupingTask ordered(GroupingTask task) {
        return task.with(task.wishes().stream().map(PlainContradictions::ordered).distinct()
                .sorted(java.util.Comparator.comparing((Wish w) -> w.getClass().getSimpleName())
                        .thenComparing(w -> w.children().getFirst()).thenComparing(w -> w.children().getLast())
                        .thenComparing(Wish::toString)).toList());
    }

    private static Wish ordered(Wish wish) {
        return switch (wish) {
            case Wish.Apart w when w.one().compareTo(w.other()) > 0 -> new Wish.Apart(w.other(), w.one());
            case Wish.Together w when w.one().compareTo(w.other()) > 0 -> new Wish.Together(w.other(), w.one());
            default -> wish;
        };
    }

    private void add(Kind kind, Collection<String> children, List<Wish> wishes, int room) {
        found.add(new Contradiction(kind, List.copyOf(children), wishes, room));
    }

    private void names() {
        Set<String> known = new HashSet<>();
        task.children().forEach(c -> known.add(c.id()));
        for (Wish wish : task.wishes()) {
            for (String child : new LinkedHashSet<>(wish.children())) {
                if (!known.contains(child)) {
                    add(Kind.UNKNOWN_CHILD, List.of(child), List.of(wish), 0);
                }
            }
            if (wish instanceof Wish.InGroup place && (place.group() < 1 || place.group() > task.groups())) {
                add(Kind.NO_SUCH_GROUP, wish.children(), List.of(wish), task.groups());
            }
        }
    }

    private void pairs() {
        for (Wish wish : task.wishes()) {
            if (wish instanceof Wish.Together both && !both.one().equals(both.other())) {
                bonds.computeIfAbsent(both.one(), c -> new ArrayList<>()).add(both);
                bonds.computeIfAbsent(both.other(), c -> new ArrayList<>()).add(both);
            }
        }
        for (Wish wish : task.wishes()) {
            if (wish instanceof Wish.Apart both) {
                if (both.one().equals(both.other())) {
                    add(Kind.APART_FROM_ITSELF, List.of(both.one()), List.of(wish), 0);
                } else {
                    List<Wish> chain = chain(both.one(), both.other());
                    if (!chain.isEmpty()) {
                        chain.add(both);
                        add(Kind.BOTH, ends(both.one(), both.other(), chain), chain, 0);
                    }
                }
            }
        }
    }

    /** The shortest chain of together wishes between two children; empty when there is none. */
    private List<Wish> chain(String from, String to) {
        Map<String, Wish.Together> cameBy = new HashMap<>();
        Deque<String> open = new ArrayDeque<>(List.of(from));
        Set<String> seen = new HashSet<>(Set.of(from));
        while (!open.isEmpty()) {
            String here = open.remove();
            for (Wish.Together bond : bonds.getOrDefault(here, List.of())) {
                String next = bond.one().equals(here) ? bond.other() : bond.one();
                if (seen.add(next)) {
                    cameBy.put(next, bond);
                    open.add(next);
                }
            }
        }
        List<Wish> chain = new ArrayList<>();
        for (String at = to; cameBy.containsKey(at) && !at.equals(from);) {
            Wish.Together bond = cameBy.get(at);
            chain.addFirst(bond);
            at = bond.one().equals(at) ? bond.other() : bond.one();
        }
        return chain;
    }

    private static List<String> ends(String one, String other, List<Wish> chain) {
        Set<String> children = new LinkedHashSet<>(List.of(one, other));
        chain.forEach(w -> children.addAll(w.children()));
        return List.copyOf(children);
    }

    private void blocks() {
        Blocks blocks = new Blocks(task);
        int[] placed = new int[task.groups()];
        List<Set<String>> inGroup = new ArrayList<>();
        List<List<Wish>> fixing = new ArrayList<>();
        for (int g = 0; g < task.groups(); g++) {
            inGroup.add(new TreeSet<>());
            fixing.add(new ArrayList<>());
        }
        for (int b = 0; b < blocks.count(); b++) {
            List<String> ids = blocks.members.get(b).stream().map(GroupChild::id).toList();
            List<Wish> bonded = wishes(Wish.Together.class, ids);
            if (ids.size() > task.largest()) {
                add(Kind.CHAIN_TOO_LONG, ids, bonded, task.largest());
                continue;
            }
            List<Wish.InGroup> fixed = wishes(Wish.InGroup.class, ids).stream().map(Wish.InGroup.class::cast).toList();
            int block = b;
            int[] open = IntStream.range(0, task.groups()).filter(g -> blocks.allowed[block][g]).toArray();
            if (open.length == 0) {
                noPlace(ids, bonded, fixed);
            } else if (!fixed.isEmpty()) {
                int g = open[0];
                placed[g] += ids.size();
                inGroup.get(g).addAll(ids);
                fixing.get(g).addAll(bonded);
                fixing.get(g).addAll(fixed);
            }
        }
        for (int g = 0; g < task.groups(); g++) {
            if (placed[g] > task.largest()) {
                add(Kind.GROUP_TOO_FULL, inGroup.get(g), fixing.get(g), task.largest());
            }
            apartInside(inGroup.get(g), fixing.get(g), g + 1);
        }
    }

    private void noPlace(List<String> ids, List<Wish> bonded, List<Wish.InGroup> fixed) {
        for (Wish.InGroup one : fixed) {
            for (Wish.InGroup other : fixed) {
                if (one.group() < other.group()) {
                    List<Wish> wishes = new ArrayList<>(chain(one.child(), other.child()));
                    wishes.add(one);
                    wishes.add(other);
                    add(Kind.TWO_PLACES, ends(one.child(), other.child(), wishes), wishes, 0);
                    return;
                }
            }
        }
        List<Wish> wishes = new ArrayList<>(bonded);
        wishes.addAll(fixed);
        wishes.addAll(wishes(Wish.AwayAt.class, ids));
        wishes.addAll(wishes(Wish.WithSecondAdult.class, ids));
        add(Kind.NO_PLACE, ids, wishes, 0);
    }

    private void apartInside(Set<String> ids, List<Wish> fixing, int group) {
        for (Wish wish : task.wishes()) {
            if (wish instanceof Wish.Apart both && ids.contains(both.one()) && ids.contains(both.other())
                    && chain(both.one(), both.other()).isEmpty()) {
                List<Wish> wishes = new ArrayList<>(fixing);
                wishes.add(wish);
                add(Kind.APART_IN_ONE_PLACE, wish.children(), wishes, group);
            }
        }
    }

    private List<Wish> wishes(Class<? extends Wish> kind, Collection<String> ids) {
        return task.wishes().stream().filter(kind::isInstance).filter(w -> ids.containsAll(w.children())).toList();
    }

    private void clique() {
        Blocks blocks = new Blocks(task);
        List<Integer> clique = new ApartClique(blocks.apart).ofSize(task.groups() + 1);
        if (!clique.isEmpty()) {
            List<List<String>> apart = clique.stream()
                    .map(b -> blocks.members.get(b).stream().map(GroupChild::id).toList()).toList();
            Set<String> all = new TreeSet<>();
            apart.forEach(all::addAll);
            List<Wish> wishes = task.wishes().stream().filter(w -> w instanceof Wish.Apart
                    || w instanceof Wish.Together).filter(w -> all.containsAll(w.children())).toList();
            Set<String> named = new TreeSet<>();
            wishes.stream().filter(Wish.Apart.class::isInstance).forEach(w -> named.addAll(w.children()));
            add(Kind.TOO_MANY_APART, named, wishes, task.groups());
        }
    }
}
