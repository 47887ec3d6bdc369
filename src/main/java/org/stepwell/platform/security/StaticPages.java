package org.stepwell.platform.security;

import org.springframework.context.annotation.Configuration;
import org.springframework.web.servlet.config.annotation.ViewControllerRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Where the two pages outside the screens live. */
@Configuration(proxyBeanMethods = false)
class StaticPages implements WebMvcConfigurer {
    @Override
    public void addViewControllers(ViewControllerRegistry pages) {
        pages.addViewController("/login").setViewName("forward:/sign-in/index.html");
        pages.addRedirectViewController("/table", "/table/");
        pages.addViewController("/table/").setViewName("forward:/table/index.html");
    }
}
