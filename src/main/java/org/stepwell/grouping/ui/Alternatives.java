package org.stepwell.grouping.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import org.stepwell.core.grouping.Aim;
import org.stepwell.core.grouping.GroupFinder;
import org.stepwell.core.grouping.GroupScore;
import org.stepwell.core.grouping.Grouping;
import org.stepwell.core.grouping.GroupingTask;
import org.stepwell.core.grouping.Proposal;
import org.stepwell.core.wording.GroupingWording;
import org.stepwell.grouping.GroupsPicture;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** Several ways to share the class out, side by side; the adult takes one to the board, or none. */
final class Alternatives extends Div {
    private final Words words = Words.of("grouping");
    private final GroupsPicture picture;
    private final ScorePanel panel;
    private final BiConsumer<Aim, Grouping> taken;

    Alternatives(GroupsPicture picture, BiConsumer<Aim, Grouping> taken) {
        this.picture = picture;
        this.panel = new ScorePanel(picture);
        this.taken = taken;
        addClassName("cards");
    }

    /**
     * Looks for groups that keep the wishes, the pins and the second adult's groups of a board. What comes out the same
     * under two aims is shown once.
     *
     * @return the first of them; empty when there are none, and then the card says why
     */
    Optional<Grouping> find(Sharing sharing) {
        removeAll();
        Map<Map<String, Integer>, Grouping> shown = new LinkedHashMap<>();
        List<Aim> aims = picture.unit() ? List.of(Aim.FOCUS, Aim.NEW_COMPANY, Aim.MIXED) : List.of(Aim.MIXED);
        for (Aim aim : aims) {
            GroupingTask task = picture.task(sharing.groups(), aim, sharing.pins(), sharing.secondAdult());
            switch (GroupFinder.propose(task)) {
                case Proposal.Groups found -> {
                    if (shown.putIfAbsent(found.grouping().groupOf(), found.grouping()) == null) {
                        add(card(aim, task, found.grouping()));
                    }
                }
                case Proposal.Impossible not -> {
                    add(impossible(not));
                    return Optional.empty();
                }
            }
        }
        return shown.values().stream().findFirst();
    }

    private Div card(Aim aim, GroupingTask task, Grouping grouping) {
        Map<String, String> labels = picture.labels();
        GroupScore score = GroupScore.of(task, grouping.groupOf());
        Div card = Parts.sheet(new H3(words.say("aim." + aim)), new Paragraph(panel.summary(score)));
        for (GroupScore.Table table : score.tables()) {
            Paragraph line = new Paragraph(words.say("alternative.group", table.group(), table.children().stream()
                    .map(c -> labels.getOrDefault(c, c)).sorted().collect(Collectors.joining(", "))));
            line.addClassName("small");
            card.add(line);
        }
        card.add(Parts.button(words.say("alternative.take"), () -> taken.accept(aim, grouping)));
        return card;
    }

    private Div impossible(Proposal.Impossible not) {
        GroupingWording wording = new GroupingWording(Words.language());
        Map<String, String> labels = picture.labels();
        Div card = Parts.sheet(new H3(words.say("impossible")));
        card.getElement().setAttribute("role", "alert");
        not.contradictions().forEach(c -> card.add(new Paragraph(wording.contradiction(c,
                id -> labels.getOrDefault(id, id)))));
        card.add(Parts.soft(words.say("impossible.mend")));
        return card;
    }
}
