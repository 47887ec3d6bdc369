package org.stepwell.conference.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeButton;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.function.Consumer;
import org.stepwell.conference.Evening;
import org.stepwell.core.problem.Refused;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;

/** A stretch of talks to offer: day, beginning, end, length, breaks. */
class EveningForm extends Div {
    private final Div message = new Div();

    EveningForm(Words words, LocalDate today, Consumer<Evening> offered) {
        String[] day = {today.toString()};
        String[] from = {"15:00"};
        String[] to = {"19:00"};
        String[] minutes = {"15"};
        String[] talks = {"4"};
        String[] rest = {"10"};
        Div row = new Div(Parts.input(words.say("day"), "date", day[0], text -> day[0] = text),
                Parts.input(words.say("from"), "time", from[0], text -> from[0] = text),
                Parts.input(words.say("to"), "time", to[0], text -> to[0] = text),
                Parts.input(words.say("minutes"), "number", minutes[0], text -> minutes[0] = text),
                Parts.input(words.say("talks"), "number", talks[0], text -> talks[0] = text),
                Parts.input(words.say("rest"), "number", rest[0], text -> rest[0] = text));
        row.addClassName("row");
        NativeButton offer = Parts.button(words.say("offer.do"), () -> {
            try {
                Evening evening = read(day[0], from[0], to[0], minutes[0], talks[0], rest[0]);
                evening.slots();
                offered.accept(evening);
            } catch (Refused refused) {
                Parts.say(message, Words.told(refused));
            }
        });
        offer.addClassName("strong");
        Div actions = new Div(offer);
        actions.addClassName("actions");
        add(row, Parts.soft(words.say("offer.help")), message, actions);
    }

    private static Evening read(String day, String from, String to, String minutes, String talks, String rest) {
        try {
            return new Evening(LocalDate.parse(day), LocalTime.parse(from), LocalTime.parse(to),
                    Integer.parseInt(minutes.strip()), talks.isBlank() ? 0 : Integer.parseInt(talks.strip()),
                    rest.isBlank() ? 0 : Integer.parseInt(rest.strip()));
        } catch (DateTimeException | NumberFormatException none) {
            throw new Refused("conference.fields");
        }
    }
}
