package org.stepwell.platform.ui;

import com.vaadin.flow.server.ServiceInitEvent;
import com.vaadin.flow.server.VaadinRequest;
import com.vaadin.flow.server.VaadinResponse;
import com.vaadin.flow.server.VaadinServiceInitListener;
import jakarta.servlet.http.Cookie;
import jakarta.servlet.http.HttpServletRequest;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.stepwell.core.wording.Language;

/**
 * Which language a screen opens in: the one chosen on this browser, kept in the cookie {@value #COOKIE}, else the first
 * of ours that the browser asks for, else English.
 */
@Component
public class ReaderLanguage implements VaadinServiceInitListener {
    /** Name of the cookie that keeps the choice of this browser; its value is {@code en} or {@code es}. */
    public static final String COOKIE = "stepwell-language";

    private static final int YEAR = 365 * 24 * 60 * 60;

    @Override
    public void serviceInit(ServiceInitEvent event) {
        event.addIndexHtmlRequestListener(page -> page.getDocument().getElementsByTag("html").attr("lang",
                of(page.getVaadinRequest()).getLanguage()));
        event.getSource().addUIInitListener(opened -> opened.getUI().setLocale(of(VaadinRequest.getCurrent())));
    }

    /** Keeps a choice on this browser for a year, for the screens as for the Table page and sign-in. */
    static void keep(Language language) {
        Cookie cookie = new Cookie(COOKIE, language.code());
        cookie.setPath("/");
        cookie.setMaxAge(YEAR);
        cookie.setSecure(VaadinRequest.getCurrent().isSecure());
        cookie.setAttribute("SameSite", "Lax");
        VaadinResponse.getCurrent().addCookie(cookie);
    }

    /** The language that a request for a screen asks for. */
    static Locale of(VaadinRequest request) {
        return chosen(request.getCookies()).orElseGet(() -> locale(request.getLocale().getLanguage()));
    }

    /** The language in which a request of a page's own code is answered: the one chosen, else English. */
    public static Locale of(HttpServletRequest request) {
        return chosen(request.getCookies()).orElse(Locale.US);
    }

    private static Optional<Locale> chosen(Cookie @Nullable [] cookies) {
        return Stream.ofNullable(cookies).flatMap(Stream::of).filter(cookie -> cookie.getName().equals(COOKIE))
                .findFirst().map(cookie -> locale(cookie.getValue()));
    }

    private static Locale locale(String code) {
        return code.equals("es") ? Locale.forLanguageTag("es-US") : Locale.US;
    }
}
