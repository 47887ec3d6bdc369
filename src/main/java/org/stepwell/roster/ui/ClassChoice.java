package org.stepwell.roster.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.server.VaadinSession;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.stepwell.platform.ui.Parts;
import org.stepwell.platform.ui.Words;
import org.stepwell.roster.Classroom;

/** The class the screens are about. A choice holds on every screen until the adult signs out. */
public final class ClassChoice {
    private static final String KEY = "stepwell.class";

    private ClassChoice() {
    }

    /**
     * The class chosen last, else the first.
     *
     * @param classes those the adult sees, at least one
     */
    public static Classroom of(List<Classroom> classes) {
        UUID chosen = chosen();
        return classes.stream().filter(c -> c.classId().equals(chosen)).findFirst().orElseGet(classes::getFirst);
    }

    /** Name of the class, or a choice among several that draws the screen afresh. */
    public static Component line(List<Classroom> classes) {
        Classroom now = of(classes);
        if (classes.size() == 1) {
            return Parts.soft(now.name());
        }
        Map<String, String> names = new LinkedHashMap<>();
        classes.forEach(room -> names.put(room.classId().toString(), room.name()));
        return Parts.choice(Words.of("parts").say("class"), names, now.classId().toString(), id -> {
            VaadinSession.getCurrent().setAttribute(KEY, UUID.fromString(id));
            UI.getCurrent().refreshCurrentRoute(false);
        });
    }

    /** What an adult reads who sees no class. */
    public static Component none() {
        return Parts.soft(Words.of("parts").say("no-class"));
    }

    /** What stands instead of a class without children: where to begin. */
    public static Component noChildren() {
        return Parts.soft(Words.of("parts").say("no-children"));
    }

    private static @Nullable UUID chosen() {
        VaadinSession session = VaadinSession.getCurrent();
        return session != null && session.getAttribute(KEY) instanceof UUID id ? id : null;
    }
}
