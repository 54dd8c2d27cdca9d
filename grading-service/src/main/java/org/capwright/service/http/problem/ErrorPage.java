package org.capwright.service.http.problem;

import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import org.capwright.service.http.Languages;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestAttribute;
import org.springframework.web.bind.annotation.RequestMapping;

/** Stands in for the usual error page, where an error comes from the servlet container. */
@Controller
@Hidden
final class ErrorPage implements ErrorController {

    /** Answers what the container forwards. Without a status somebody asked for the page itself, where there is nothing to see. */
    @RequestMapping("${spring.web.error.path:/error}")
    ResponseEntity<ProblemDetail> answer(
            @RequestAttribute(name = RequestDispatcher.ERROR_STATUS_CODE, required = false) @Nullable Integer status,
            @RequestAttribute(name = RequestDispatcher.ERROR_REQUEST_URI, required = false) @Nullable String path,
            HttpServletRequest request) {
        ProblemDetail document = ProblemKind.of(status == null ? 404 : status)
                .usual()
                .in(Languages.of(request))
                .document();
        if (path != null) {
            document.setInstance(URI.create(path));
        }
        return ProblemAnswers.answer(document, HttpHeaders.EMPTY);
    }
}
