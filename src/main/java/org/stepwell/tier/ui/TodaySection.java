package org.stepwell.tier.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;
import org.stepwell.tier.ClassPicture;

/** A sheet on the screen of the day that another feature brings along when something waits; the screen knows none of them. */
public interface TodaySection {
    /** What waits in the class today; empty when nothing does. */
    Optional<Component> of(ClassPicture picture);
}
