package org.capwright.service.sizerun;

import java.util.Map;
import org.capwright.FileFormat;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;

/** The forms that the engine writes by itself, by their registered media types. */
@Configuration(proxyBeanMethods = false)
class PieceFormats {

    @Bean
    @Order(2)
    SizeRunFormat svgFormat() {
        return new PieceFormat(new MediaType("image", "svg+xml"), FileFormat.SVG);
    }

    /** RFC 7111 and RFC 4180, section 3. */
    @Bean
    @Order(4)
    SizeRunFormat csvFormat() {
        return new PieceFormat(
                new MediaType("text", "csv", Map.of("charset", "UTF-8", "header", "present")), FileFormat.CSV);
    }

    @Bean
    @Order(5)
    SizeRunFormat pdfFormat() {
        return new PieceFormat(MediaType.APPLICATION_PDF, FileFormat.PDF);
    }

    @Bean
    @Order(6)
    SizeRunFormat hpglFormat() {
        return new PieceFormat(new MediaType("application", "vnd.hp-hpgl"), FileFormat.HPGL);
    }
}
