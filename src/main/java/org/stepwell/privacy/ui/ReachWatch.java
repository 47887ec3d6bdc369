package org.stepwell.privacy.ui;

import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.HasElement;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.server.ServiceInitEvent;
import com.vaadin.flow.server.SynchronizedRequestHandler;
import com.vaadin.flow.server.VaadinRequest;
import com.vaadin.flow.server.VaadinResponse;
import com.vaadin.flow.server.VaadinServiceInitListener;
import com.vaadin.flow.server.VaadinSession;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.stereotype.Component;
import org.stepwell.platform.security.SignedIn;
import org.stepwell.privacy.Access;

/**
 * Closes an open page once a child that was shared when it was drawn is not shared any more: whatever is pressed on it next,
 * the page is emptied first and drawn anew. What a screen holds in memory would else outlive the right to see it. Whoever
 * loses a class loses the session instead.
 */
@Component
class ReachWatch implements VaadinServiceInitListener {
    private static final String UI_MESSAGES = "uidl";

    private final Access access;

    ReachWatch(Access access) {
        this.access = access;
    }

    /** Children shared when the screen that is open was entered. */
    private record Drawn(Set<UUID> children) {}

    @Override
    public void serviceInit(ServiceInitEvent event) {
        event.getSource().addUIInitListener(init -> init.getUI().addBeforeEnterListener(enter ->
                ComponentUtil.setData(enter.getUI(), Drawn.class, seen())));
        event.addRequestHandler(new Closing());
    }

    private @Nullable Drawn seen() {
        var held = SecurityContextHolder.getContext().getAuthentication();
        return held != null && held.getPrincipal() instanceof SignedIn ? new Drawn(access.shared()) : null;
    }

    private final class Closing extends SynchronizedRequestHandler {
        private static final long serialVersionUID = 1L;

        @Override
        public boolean canHandleRequest(VaadinRequest request) {
            return UI_MESSAGES.equals(request.getParameter("v-r"));
        }

        /** Never answers itself: it only takes away what the message would have met. */
        @Override
        public boolean synchronizedHandleRequest(VaadinSession session, VaadinRequest request, VaadinResponse response) {
            UI ui = session.getService().findUI(request);
            Drawn drawn = ui == null ? null : ComponentUtil.getData(ui, Drawn.class);
            Drawn now = drawn == null ? null : seen();
            if (drawn != null && now != null && !now.children().containsAll(drawn.children())) {
                ComponentUtil.setData(ui, Drawn.class, now);
                if (ui.getCurrentView() instanceof HasElement view) {
                    view.getElement().removeAllChildren();
                }
                ui.getPage().reload();
            }
            return false;
        }
    }
}
