package org.capwright.service.http.problem;

import io.swagger.v3.oas.annotations.Hidden;
import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Map;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;

/** Stands in for the usual error page, where an error comes from the servlet container. */
@Controller
@Hidden
final class ErrorPage implements ErrorController {

    private final ProblemWriter writer;

    ErrorPage(ProblemWriter writer) {
        this.writer = writer;
    }

    /** Answers what the container forwards. */
    @RequestMapping("${spring.web.error.path:/error}")
    void answer(HttpServletRequest request, HttpServletResponse response) throws IOException {
        Object code = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE);
        // Without a code somebody asked for the page itself, where there is nothing to see.
        int status = code instanceof Integer known ? known : 404;
        writer.write(request, response, StatusProblems.of(status, request.getMethod(), Map.of()), Map.of());
    }
}
