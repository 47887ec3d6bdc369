package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;
import org.stepwell.roster.ChildRow;

/** A part of the page about a child that another feature brings along; the page knows none of them. */
public interface ChildSection {
    /** What this adult sees of it on this child; empty when nothing. */
    Optional<Component> on(ChildRow child);
}
