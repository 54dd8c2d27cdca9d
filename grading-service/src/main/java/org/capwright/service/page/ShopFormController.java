package org.capwright.service.page;

import io.swagger.v3.oas.annotations.Hidden;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.capwright.service.http.EntityTag;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.WebRequest;

/** Hands out the form that shops put into their pages. The address stays; pages of any origin may use the script. */
@RestController
@Hidden
final class ShopFormController {

    static final String MODULE = "/static/form/element.js";

    /** A shop's page is to have a mended form within the day. */
    private static final Duration FRESH = Duration.ofHours(1);

    private static final MediaType SCRIPT = new MediaType("text", "javascript", StandardCharsets.UTF_8);

    private final byte[] script = OneScript.of(ShopFormController.class, MODULE).getBytes(StandardCharsets.UTF_8);
    private final String tag = EntityTag.of(script);

    /** The element {@code sleeve-measure}. */
    @GetMapping("/form/sleeve-measure.js")
    ResponseEntity<byte[]> element(WebRequest request) {
        ResponseEntity.BodyBuilder answer = ResponseEntity.status(request.checkNotModified(tag) ? 304 : 200)
                .contentType(SCRIPT)
                .eTag(tag)
                .cacheControl(CacheControl.maxAge(FRESH).cachePublic())
                .header("Cross-Origin-Resource-Policy", "cross-origin")
                .header(HttpHeaders.ACCESS_CONTROL_ALLOW_ORIGIN, "*");
        return request.checkNotModified(tag) ? answer.build() : answer.body(script);
    }
}
