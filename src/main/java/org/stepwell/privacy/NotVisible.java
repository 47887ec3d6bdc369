package org.stepwell.privacy;

import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.ResponseStatus;

/** Asked for something that does not exist or may not be seen by this adult; the two answer the same. */
@ResponseStatus(HttpStatus.NOT_FOUND)
public class NotVisible extends RuntimeException {
    /** Says nothing about which of the two it is. */
    public NotVisible() {
        super("there is nothing here for you");
    }
}
