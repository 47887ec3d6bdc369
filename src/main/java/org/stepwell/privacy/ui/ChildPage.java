package org.stepwell.privacy.ui;

import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.NotFoundException;
import java.util.UUID;
import java.util.function.Consumer;
import org.stepwell.privacy.AccessRecordService;
import org.stepwell.privacy.NotVisible;
import org.stepwell.privacy.Seen;

/** The way into a screen about one child, named by its id in the address: written down before it is drawn. */
public final class ChildPage {
    private ChildPage() {
    }

    /**
     * Draws the screen for the child of the route parameter {@code child}. An id that is none, that nobody has or that
     * may not be seen leads to the same page that says so; the last two are written down as denied.
     */
    public static void enter(BeforeEnterEvent event, AccessRecordService record, Seen what, Consumer<UUID> draw) {
        try {
            UUID childId = UUID.fromString(event.getRouteParameters().get("child").orElse(""));
            try {
                record.seen(childId, what);
                draw.accept(childId);
            } catch (NotVisible closed) {
                record.denied(childId, what);
                event.rerouteToError(NotFoundException.class);
            }
        } catch (IllegalArgumentException nothing) {
            event.rerouteToError(NotFoundException.class);
        }
    }
}
