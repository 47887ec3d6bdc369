package org.stepwell.platform.ui;

import com.vaadin.flow.server.ServiceInitEvent;
import com.vaadin.flow.server.VaadinRequest;
import com.vaadin.flow.server.VaadinServiceInitListener;
import jakarta.servlet.http.Cookie;
import java.util.Locale;
import org.springframework.stereotype.Component;

/**
 * Which language a screen opens in: the one chosen on this browser, kept in the cookie {@value #COOKIE}, else the first
 * of ours that the browser asks for, else English.
 */
@Component
public class ReaderLanguage implements VaadinServiceInitListener {
    /** Name of the cookie that keeps the choice of this browser; its value is {@code en} or {@code es}. */
    public static final String COOKIE = "stepwell-language";

    @Override
    public void serviceInit(ServiceInitEvent event) {
        event.getSource().addUIInitListener(opened -> opened.getUI().setLocale(of(VaadinRequest.getCurrent())));
    }

    /** The language that a request asks for. */
    static Locale of(VaadinRequest request) {
        Cookie[] cookies = request.getCookies();
        if (cookies != null) {
            for (Cookie cookie : cookies) {
                if (cookie.getName().equals(COOKIE)) {
                    return locale(cookie.getValue());
                }
            }
        }
        return locale(request.getLocale().getLanguage());
    }

    private static Locale locale(String code) {
        return code.equals("es") ? Locale.forLanguageTag("es-US") : Locale.US;
    }
}
