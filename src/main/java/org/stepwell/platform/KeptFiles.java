package org.stepwell.platform;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpServletResponseWrapper;
import java.io.IOException;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

/**
 * Lets a browser keep the files of the screens whose address changes with their content: the bundle, whose names carry
 * a hash, and style sheets asked for with one. They hold nothing about anybody. A second visit then loads none of them.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class KeptFiles extends OncePerRequestFilter {
    private static final String KEEP = "max-age=31536000, immutable";

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String path = request.getRequestURI();
        return !path.startsWith("/VAADIN/build/")
                && !(path.startsWith("/look/") && request.getParameter("v-c") != null);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain rest)
            throws ServletException, IOException {
        rest.doFilter(request, new Keeping(response));
    }

    /** Everything later in the chain would forbid or shorten the keeping; refusals are never kept. */
    private static final class Keeping extends HttpServletResponseWrapper {
        Keeping(HttpServletResponse response) {
            super(response);
            response.setHeader("Cache-Control", KEEP);
        }

        private static boolean aboutKeeping(String name) {
            return name.equalsIgnoreCase("Cache-Control") || name.equalsIgnoreCase("Pragma")
                    || name.equalsIgnoreCase("Expires");
        }

        @Override
        public void setHeader(String name, String value) {
            if (!aboutKeeping(name)) {
                super.setHeader(name, value);
            }
        }

        @Override
        public void addHeader(String name, String value) {
            if (!aboutKeeping(name)) {
                super.addHeader(name, value);
            }
        }

        @Override
        public void setDateHeader(String name, long date) {
            if (!aboutKeeping(name)) {
                super.setDateHeader(name, date);
            }
        }

        @Override
        public void setStatus(int status) {
            if (status >= HttpServletResponse.SC_BAD_REQUEST) {
                super.setHeader("Cache-Control", "no-store");
            }
            super.setStatus(status);
        }

        @Override
        public void sendError(int status) throws IOException {
            super.setHeader("Cache-Control", "no-store");
            super.sendError(status);
        }

        @Override
        public void sendError(int status, String message) throws IOException {
            super.setHeader("Cache-Control", "no-store");
            super.sendError(status, message);
        }

        @Override
        public void sendRedirect(String location) throws IOException {
            super.setHeader("Cache-Control", "no-store");
            super.sendRedirect(location);
        }
    }
}
