package org.stepwell.conference.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeButton;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.UUID;
import org.stepwell.conference.FamilyTalkService;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** What the family said and what was agreed, written down in twenty seconds. */
class TalkForm extends Div {
    private static final int ROWS = 3;
    private final Div message = new Div();
    private UUID talkId = UUID.randomUUID();
    private String said = "";
    private String agreed = "";
    private String again = "";

    /** @param kept told when a talk was kept */
    TalkForm(FamilyTalkService talks, UUID childId, LocalDate today, Words words, Runnable kept) {
        addClassName("talk-form");
        String[] on = {today.toString()};
        NativeButton keep = Parts.button(words.say("talk.keep"), () -> {
            try {
                talks.add(childId, talkId, LocalDate.parse(on[0]), said, agreed,
                        again.isBlank() ? null : LocalDate.parse(again));
                talkId = UUID.randomUUID();
                kept.run();
            } catch (Refused refused) {
                Parts.say(message, Words.told(refused));
            } catch (DateTimeParseException noDay) {
                Parts.say(message, words.say("talk.no-day"));
            }
        });
        keep.addClassName("strong");
        Div days = new Div(Parts.input(words.say("talk.on"), "date", on[0], text -> on[0] = text),
                Parts.input(words.say("talk.again"), "date", "", text -> again = text));
        days.addClassName("row");
        add(Parts.text(words.say("talk.said"), ROWS, "", text -> said = text),
                Parts.text(words.say("talk.agreed"), ROWS, "", text -> agreed = text), days, keep, message);
    }
}
