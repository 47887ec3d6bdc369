package org.stepwell.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.stepwell.core.wording.Language;
import org.stepwell.platform.ui.Words;
import org.stepwell.review.Comparison.Pair;
import org.stepwell.review.SealedReview.Line;

/**
 * A comparison in sentences, the same on the screen and on paper.
 *
 * @param language of the sentences
 * @param labels what each child now in the class is called
 */
public record ComparisonText(Language language, Map<UUID, String> labels) {

    /** Its heading. */
    public String title(Comparison compared) {
        Words words = Words.of("weekly", language);
        return words.say("compare", words.day(compared.before()));
    }

    /** One sentence on each child for whom something changed, then who stayed. */
    public List<String> sentences(Comparison compared) {
        Words words = Words.of("weekly", language);
        List<String> said = new ArrayList<>();
        compared.children().stream().filter(Pair::changed).forEach(pair -> said.add(changed(words, pair)));
        if (said.isEmpty()) {
            said.add(words.say("compare.same"));
        }
        stayed(words, compared, "compare.stayed.more", pair -> pair.looks() > 0, said);
        stayed(words, compared, "compare.stayed.none", pair -> pair.looks() == 0, said);
        others(words, "compare.came", compared.came(), said);
        others(words, "compare.went", compared.went(), said);
        return said;
    }

    private String changed(Words words, Pair pair) {
        StringBuilder said = new StringBuilder(label(pair.now().childId())).append(": ");
        said.append(pair.decidedOtherwise() ? words.say("compare.decided", decided(words, pair.then()),
                decided(words, pair.now())) : words.say("compare.kept", decided(words, pair.now())));
        said.append(' ').append(pair.suggestedOtherwise() ? words.say("compare.suggested", suggested(words, pair.then()),
                suggested(words, pair.now())) : words.say("compare.suggested.same", suggested(words, pair.now())));
        said.append(' ').append(words.say("compare.added", pair.looks(), pair.added().entrySet().stream()
                .map(e -> e.getKey() + " (" + e.getValue() + ")").collect(Collectors.joining(", "))));
        return said.toString();
    }

    private String decided(Words words, Line line) {
        return line.until() == null ? tier(line.to()) : words.say("compare.put-off", words.day(line.until()));
    }

    private String suggested(Words words, Line line) {
        return words.say("compare.verdict." + line.verdict(), tier(line.suggested()));
    }

    private String tier(org.stepwell.core.tier.Tier tier) {
        return Words.of("parts", language).say("tier." + tier.code());
    }

    private void stayed(Words words, Comparison compared, String key, Predicate<Pair> which, List<String> said) {
        String names = compared.children().stream().filter(pair -> !pair.changed()).filter(which)
                .map(pair -> label(pair.now().childId()) + (pair.looks() == 0 ? "" : " (" + pair.looks() + ")"))
                .collect(Collectors.joining(", "));
        if (!names.isEmpty()) {
            said.add(words.say(key, names));
        }
    }

    /** Who left may be somebody whose name this adult no longer sees. */
    private void others(Words words, String key, List<UUID> children, List<String> said) {
        if (!children.isEmpty()) {
            said.add(words.say(key, children.size(), children.stream().map(this::label)
                    .collect(Collectors.joining(", "))));
        }
    }

    private String label(UUID childId) {
        return labels.getOrDefault(childId, "…");
    }
}
