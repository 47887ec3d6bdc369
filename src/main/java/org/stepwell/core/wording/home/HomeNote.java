package org.stepwell.core.wording.home;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.stepwell.core.wording.Language;

/**
 * One page that goes home with one child: no tier, no step, no other child.
 *
 * @param language the language of all its sentences
 * @param parts the sentences of each part, in order; a part without any is left out of the page
 * @param firsts days on which the child showed a way for the first time, oldest first; the small picture of growth
 */
public record HomeNote(Language language, Map<Part, List<String>> parts, List<LocalDate> firsts) {

    /** The parts of the page, in the order in which they stand on it. */
    public enum Part {
        /** What the child can do: strengths, with dates. */
        CAN,
        /** What changed. */
        GROWTH,
        /** What comes next. */
        NEXT,
        /** One thing to try with what every home has. */
        AT_HOME,
        /** What the school would like to hear. */
        ASK
    }

    /** Copies, and holds that each part is there. */
    public HomeNote {
        Map<Part, List<String>> all = new EnumMap<>(Part.class);
        for (Part part : Part.values()) {
            all.put(part, List.copyOf(parts.getOrDefault(part, List.of())));
        }
        parts = Map.copyOf(all);
        firsts = List.copyOf(firsts);
    }

    /** The sentences of a part. */
    public List<String> of(Part part) {
        return Objects.requireNonNull(parts.get(part));
    }

    /** The same page with other sentences in one part. */
    public HomeNote with(Part part, List<String> sentences) {
        Map<Part, List<String>> changed = new EnumMap<>(parts);
        changed.put(part, sentences);
        return new HomeNote(language, changed, firsts);
    }

    /** All sentences in the order of the page. */
    public String text() {
        return java.util.Arrays.stream(Part.values()).flatMap(part -> of(part).stream())
                .collect(Collectors.joining("\n"));
    }
}
