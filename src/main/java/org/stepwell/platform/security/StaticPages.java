package org.stepwell.platform.security;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.io.Resource;
import org.springframework.http.CacheControl;
import org.springframework.web.servlet.config.annotation.ResourceHandlerRegistry;
import org.springframework.web.servlet.config.annotation.ViewControllerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/**
 * Where the pages outside the screens live. A browser keeps their files but asks before each use whether they are still
 * the same, so that no page ever runs on files of two versions. The answer goes by content: a date would not tell two
 * builds apart, as every file of the jar bears the same one.
 */
@Configuration(proxyBeanMethods = false)
class StaticPages implements WebMvcConfigurer {
    private final Map<String, String> tags = new ConcurrentHashMap<>();

    @Override
    public void addViewControllers(ViewControllerRegistry pages) {
        pages.addViewController("/login").setViewName("forward:/sign-in/index.html");
        pages.addViewController("/set-up").setViewName("forward:/sign-in/set-up.html");
        pages.addRedirectViewController("/table", "/table/");
        pages.addViewController("/table/").setViewName("forward:/table/index.html");
    }

    @Override
    public void addResourceHandlers(ResourceHandlerRegistry files) {
        for (String folder : List.of("table", "look", "check", "sign-in")) {
            files.addResourceHandler("/" + folder + "/**")
                    .addResourceLocations("classpath:/META-INF/resources/" + folder + "/")
                    .setCacheControl(CacheControl.noCache()).setUseLastModified(false).setEtagGenerator(this::tag);
        }
    }

    private String tag(Resource file) {
        return tags.computeIfAbsent(file.getDescription(), name -> {
            try (InputStream in = file.getInputStream()) {
                byte[] digest = MessageDigest.getInstance("SHA-256").digest(in.readAllBytes());
                return "W/\"" + HexFormat.of().formatHex(digest, 0, 16) + "\"";
            } catch (IOException failed) {
                throw new UncheckedIOException(failed);
            } catch (NoSuchAlgorithmException never) {
                throw new IllegalStateException(never);
            }
        });
    }
}
