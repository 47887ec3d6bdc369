package org.stepwell.review.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.NativeDetails;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.core.tier.Tier;
import org.stepwell.core.wording.SuggestionWording;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.privacy.NotVisible;
import org.stepwell.review.Choice;
import org.stepwell.review.OpenReview;
import org.stepwell.review.ReviewService;
import org.stepwell.review.ReviewService.Refused;
import org.stepwell.review.SealedReview;
import org.stepwell.roster.ChildRow;
import org.stepwell.roster.Classroom;
import org.stepwell.roster.RosterService;
import org.stepwell.roster.ui.ClassChoice;
import org.stepwell.tier.ClassPicture.OneChild;
import org.stepwell.tier.TierService;

/** One sitting for the class: what changed first, one tap for the rest, closed with a list of what changes. */
@Route("review")
@Menu(order = 230, title = "weekly.title")
@PermitAll
class ReviewView extends Div implements HasDynamicTitle, ReviewCard.Acts {
    private final RosterService roster;
    private final TierService tiers;
    private final ReviewService reviews;
    private final Map<String, String> adults;
    private final Words texts = Words.of("weekly");
    private final Map<UUID, String> tellers = new HashMap<>();
    private final Set<UUID> reopened = new HashSet<>();
    private @Nullable Classroom room;
    private @Nullable OpenReview review;

    ReviewView(RosterService roster, TierService tiers, ReviewService reviews) {
        this.roster = roster;
        this.tiers = tiers;
        this.reviews = reviews;
        this.adults = roster.adults();
        draw("");
    }

    @Override
    public String getPageTitle() {
        return Parts.pageTitle(texts.say("title"));
    }

    private void draw(String problem) {
        removeAll();
        add(new H1(texts.say("title")));
        List<Classroom> classes = roster.classes();
        if (classes.isEmpty()) {
            add(ClassChoice.none());
            return;
        }
        room = ClassChoice.of(classes);
        add(ClassChoice.line(classes));
        Div message = new Div();
        add(message);
        if (!problem.isEmpty()) {
            Parts.say(message, problem);
        }
        try {
            Optional<OpenReview> open = reviews.open(room.classId());
            review = open.orElse(null);
            open.ifPresent(this::draw);
            List<SealedReview> sealed = reviews.sealed(room.classId());
            if (open.isEmpty() && !sealed.isEmpty()) {
                add(sheet(sealed.getFirst()),
                        Parts.soft(texts.say("sealed.next", texts.day(sealed.getFirst().week().plusWeeks(1)))));
            }
            earlier(open.isEmpty() ? sealed.stream().skip(1).toList() : sealed);
        } catch (NotVisible notMine) {
            add(Parts.soft(texts.say("only-adults")));
        } catch (Refused refused) {
            add(Parts.soft(texts.say("refused." + refused.why().name())));
        }
    }

    private Map<UUID, String> labels() {
        Map<UUID, String> labels = new HashMap<>();
        if (room != null) {
            roster.children(room.classId()).forEach(child -> labels.put(child.childId(), child.label()));
        }
        return labels;
    }

    private SealedSheet sheet(SealedReview sealed) {
        UUID classId = java.util.Objects.requireNonNull(room).classId();
        return new SealedSheet(sealed, labels(), () -> reviews.compared(classId, sealed.reviewId()));
    }

    private void earlier(List<SealedReview> sealed) {
        if (!sealed.isEmpty()) {
            Div inside = new Div();
            sealed.forEach(each -> inside.add(sheet(each)));
            add(new NativeDetails(texts.say("earlier"), inside));
        }
    }

    private void draw(OpenReview open) {
        SuggestionWording words = new SuggestionWording(Words.language(), open.picture().progression());
        add(Parts.soft(texts.say("week", texts.day(open.week())) + " · " + texts.say("left", open.left().size())),
                Parts.soft(texts.say("intro")));
        open.picture().review().dips().forEach(dip -> add(Parts.sheet(new Paragraph(words.dip(dip)))));
        section(open, words, "think", open.order().think(), false);
        section(open, words, "look", open.order().look(), false);
        section(open, words, "quiet", open.order().quiet(), true);
        section(open, words, "rest", open.order().rest(), false);
        closing(open);
    }

    private void section(OpenReview open, SuggestionWording words, String name, List<String> keys, boolean ownCall) {
        List<OneChild> children = open.children(keys);
        add(new H2(texts.say(name)));
        if (children.isEmpty()) {
            add(Parts.soft(texts.say("nobody")));
            return;
        }
        boolean together = name.equals("look") || name.equals("rest");
        if (together || ownCall) {
            add(Parts.soft(texts.say("help." + name)));
        }
        Div cards = new Div();
        cards.addClassName("cards");
        Div done = new Div();
        for (OneChild child : children) {
            Optional<Choice> choice = open.choice(child.row().childId());
            if (choice.isPresent() && !reopened.contains(child.row().childId())) {
                done.add(chosen(child, choice.get()));
            } else {
                cards.add(new ReviewCard(open, child, words, adults, this, ownCall));
            }
        }
        List<UUID> left = children.stream().map(c -> c.row().childId())
                .filter(id -> open.choice(id).isEmpty()).toList();
        if (together && !left.isEmpty()) {
            NativeButton all = Parts.button(texts.say("all." + name, left.size()), () -> keepAll(left));
            all.addClassName("strong");
            Div row = new Div(all);
            row.addClassName("actions");
            add(row);
        }
        if (name.equals("rest") && cards.getComponentCount() > 0) {
            String names = children.stream().filter(c -> left.contains(c.row().childId()))
                    .map(c -> c.row().label()).collect(java.util.stream.Collectors.joining(", "));
            add(new NativeDetails(names.isEmpty() ? texts.say("change") : names, cards), done);
        } else {
            add(cards, done);
        }
    }

    private Component chosen(OneChild child, Choice choice) {
        Div line = new Div(new Span(texts.say("chosen." + choice.kind().name(), child.row().label(),
                Parts.word(choice.tier()), choice.by(), choice.reason(),
                choice.until() == null ? "" : texts.day(choice.until()))));
        NativeButton change = Parts.button(texts.say("change"), () -> {
            reopened.add(child.row().childId());
            draw("");
        });
        change.getElement().setAttribute("aria-label", texts.say("change") + ": " + child.row().label());
        line.add(change);
        line.addClassNames("row", "chosen");
        return line;
    }

    private void closing(OpenReview open) {
        add(new H2(texts.say("close.changes")));
        List<OneChild> moved = open.picture().children().stream().filter(c -> open.choice(c.row().childId())
                .filter(choice -> choice.tier() != c.state().tier()).isPresent()).toList();
        if (moved.isEmpty()) {
            add(new Paragraph(texts.say("close.none")));
        }
        for (OneChild child : moved) {
            UUID id = child.row().childId();
            Div row = new Div(new Paragraph(texts.say("sealed.line", child.row().label(),
                    Parts.word(child.state().tier()), Parts.word(open.choice(id).orElseThrow().tier()))),
                    Parts.input(texts.say("close.teller") + ": " + child.row().label(), "text",
                            tellers.getOrDefault(id, ""), text -> tellers.put(id, text)));
            row.addClassName("sheet");
            add(row);
        }
        add(Parts.soft(texts.say("close.honest")));
        Div row = new Div();
        row.addClassName("actions");
        if (open.left().isEmpty()) {
            NativeButton close = Parts.button(texts.say("close"), this::close);
            close.addClassName("strong");
            row.add(close);
        } else {
            row.add(Parts.soft(texts.say("left", open.left().size())));
        }
        add(row);
    }

    @Override
    public void choose(OneChild child, Choice.Kind kind, @Nullable Tier tier, @Nullable LocalDate until,
            String reason, Div message) {
        ChildRow row = child.row();
        if (review == null) {
            return;
        }
        try {
            int turn = review.turns(row.childId()) + 1;
            reviews.choose(row.classId(), row.childId(), turn, kind, tier, until, reason);
            if (kind == Choice.Kind.OWN_CALL && tier == child.state().tier()
                    && review.suggestion(child).suggested() == tier) {
                reviews.choose(row.classId(), row.childId(), turn + 1, Choice.Kind.KEEP, null, null, "");
            }
            reopened.remove(row.childId());
            draw("");
        } catch (Refused refused) {
            String words = texts.say("refused." + refused.why().name());
            if (refused.why() == Refused.Why.REASON_MISSING || refused.why() == Refused.Why.DAY_MISSING) {
                Parts.say(message, words);
            } else {
                reopened.remove(row.childId());
                draw(row.label() + ": " + words);
            }
        }
    }

    private void keepAll(List<UUID> children) {
        try {
            reviews.keepAll(java.util.Objects.requireNonNull(room).classId(), children);
            draw("");
        } catch (Refused refused) {
            draw(texts.say("refused." + refused.why().name()));
        }
    }

    private void close() {
        try {
            reviews.close(java.util.Objects.requireNonNull(room).classId(), tellers);
            draw("");
        } catch (Refused refused) {
            draw(texts.say("refused." + refused.why().name()));
        }
    }

    @Override
    public void concern(OneChild child, String kind, LocalDate on, String words) {
        tiers.recordConcern(child.row().childId(), kind, on, words);
    }
}
