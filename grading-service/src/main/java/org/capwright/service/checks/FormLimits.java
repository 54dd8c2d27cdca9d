package org.capwright.service.checks;

import jakarta.servlet.MultipartConfigElement;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Bounds of a form with files. Parts are kept in memory up to the most that is read, so that none is ever written to the disk. */
@Configuration(proxyBeanMethods = false)
class FormLimits {

    @Bean
    MultipartConfigElement forms() {
        return new MultipartConfigElement("", Uploads.MOST_BYTES, Uploads.MOST_BYTES, Uploads.MOST_BYTES);
    }
}
