package org.capwright.service.http;

import org.springframework.boot.web.servlet.FilterRegistrationBean;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.filter.ShallowEtagHeaderFilter;

/** Gives what is only looked at an entity tag, and answers 304 to whoever has it already (RFC 9110, section 13.1.2). */
@Configuration(proxyBeanMethods = false)
class EntityTags {

    /** Weak, for the container compresses no answer with a strong one. Answers with a tag of their own keep it. */
    @Bean
    FilterRegistrationBean<ShallowEtagHeaderFilter> tags() {
        ShallowEtagHeaderFilter filter = new ShallowEtagHeaderFilter();
        filter.setWriteWeakETag(true);
        FilterRegistrationBean<ShallowEtagHeaderFilter> registered = new FilterRegistrationBean<>(filter);
        registered.addUrlPatterns("/v1/size-tables", "/v1/size-tables/*", "/v3/api-docs", "/page/ranges.json");
        return registered;
    }
}
