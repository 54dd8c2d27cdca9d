package org.capwright.service.http.problem;

import jakarta.servlet.MultipartConfigElement;
import java.io.IOException;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.tomcat.util.http.fileupload.impl.FileCountLimitExceededException;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.service.http.meters.TradeMeters;
import org.capwright.words.Language;
import org.capwright.words.Text;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.ConversionNotSupportedException;
import org.springframework.core.NestedExceptionUtils;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.HttpRequestMethodNotSupportedException;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.RestControllerAdvice;
import org.springframework.web.context.request.WebRequest;
import org.springframework.web.method.annotation.MethodArgumentTypeMismatchException;
import org.springframework.web.multipart.MaxUploadSizeExceededException;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.servlet.mvc.method.annotation.ResponseEntityExceptionHandler;

/** Answers every exception of a request with a problem document, whatever media type was asked for: an error has no other form here. */
@RestControllerAdvice
final class ProblemAnswers extends ResponseEntityExceptionHandler {

    private static final Logger LOG = LoggerFactory.getLogger(ProblemAnswers.class);
    private static final int FRAMES = 12;

    private static final Problem BROKEN_FORM = Problem.of(
            ProblemKind.MALFORMED_BODY,
            "The body is not multipart/form-data that can be read: it is cut short, has no boundary, has more than 64"
                    + " parts, or a part with more than 4096 bytes of headers.");

    private final MultipartConfigElement forms;

    ProblemAnswers(MultipartConfigElement forms) {
        this.forms = forms;
    }

    static ResponseEntity<ProblemDetail> answer(ProblemDetail document, HttpHeaders headers) {
        return ResponseEntity.status(document.getStatus())
                .headers(headers)
                .cacheControl(CacheControl.noStore())
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(document);
    }

    /** Spring knows status and headers of its own exceptions; the words are ours. */
    @Override
    protected @Nullable ResponseEntity<Object> handleExceptionInternal(
            Exception exception,
            @Nullable Object body,
            HttpHeaders headers,
            HttpStatusCode status,
            WebRequest request) {
        Problem problem =
                exception instanceof ProblemException known ? known.problem() : usual(exception, status.value());
        ProblemDetail document = problem.in(language(request)).document();
        ResponseEntity<ProblemDetail> answer = answer(document, headers);
        if (answer.getStatusCode().is4xxClientError()) {
            TradeMeters.refused(ProblemKind.of(answer.getStatusCode().value()).word());
        }
        if (answer.getStatusCode().value() == ProblemKind.INTERNAL_ERROR.status()) {
            log(exception);
        }
        return super.handleExceptionInternal(exception, document, answer.getHeaders(), answer.getStatusCode(), request);
    }

    private Problem usual(Exception exception, int status) {
        if (exception instanceof HttpRequestMethodNotSupportedException wrong) {
            String[] others = wrong.getSupportedMethods();
            return Problem.of(
                    ProblemKind.METHOD_NOT_ALLOWED,
                    Text.of("This address does not answer to {method}, only to {others}.")
                            .with("method", wrong.getMethod())
                            .with(
                                    "others",
                                    others == null
                                            ? Text.of("other methods")
                                            : Text.names(
                                                    Stream.of(others).sorted().toList())));
        }
        if (exception instanceof MethodArgumentTypeMismatchException wrong) {
            return WrongParameter.of(
                            wrong.getName(),
                            wrong.getRequiredType() == Boolean.class || wrong.getRequiredType() == boolean.class
                                    ? "must be true or false"
                                    : "must be a whole number",
                            String.valueOf(wrong.getValue()))
                    .problem();
        }
        if (exception instanceof ConversionNotSupportedException) {
            // Parameters are texts, so it was a file of a form that came under the name of one.
            return Problem.of(ProblemKind.MALFORMED_BODY, "The form has a part with an unknown name.");
        }
        if (NestedExceptionUtils.getMostSpecificCause(exception) instanceof FileCountLimitExceededException) {
            return BROKEN_FORM;
        }
        return exception instanceof MaxUploadSizeExceededException
                ? Problem.of(
                        ProblemKind.BODY_TOO_LARGE,
                        Text.of("The form is larger than {most} million bytes, the most that is read of all its parts"
                                        + " together.")
                                .with("most", forms.getMaxRequestSize() / 1_000_000))
                : ProblemKind.of(status).usual();
    }

    @ExceptionHandler
    @Nullable
    ResponseEntity<Object> refused(RefusedRequestException refused, WebRequest request) {
        return answered(Problem.of(refused), request);
    }

    @ExceptionHandler
    @Nullable
    ResponseEntity<Object> brokenForm(MultipartException exception, WebRequest request) {
        return answered(BROKEN_FORM, request);
    }

    @ExceptionHandler({IOException.class, CancellationException.class})
    @Nullable
    ResponseEntity<Object> brokenOff(WebRequest request) {
        LOG.debug("the request broke off");
        return answered(ProblemKind.BAD_REQUEST.usual(), request);
    }

    private @Nullable ResponseEntity<Object> answered(Problem problem, WebRequest request) {
        ProblemException refused = new ProblemException(problem);
        return handleExceptionInternal(refused, null, new HttpHeaders(), refused.getStatusCode(), request);
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> unforeseen(Exception exception, WebRequest request) {
        log(exception);
        if (NestedExceptionUtils.getMostSpecificCause(exception) instanceof OutOfMemoryError) {
            HttpHeaders later = new HttpHeaders();
            later.set(HttpHeaders.RETRY_AFTER, "30");
            return answer(
                    Problem.of(
                                    ProblemKind.UNAVAILABLE,
                                    "There was not enough memory for this request beside the others. Retry-After says"
                                            + " when to try again; if it fails again, it is too large for this service.")
                            .in(language(request))
                            .document(),
                    later);
        }
        return answer(ProblemKind.INTERNAL_ERROR.usual().in(language(request)).document(), HttpHeaders.EMPTY);
    }

    private static Language language(WebRequest request) {
        String[] wanted = request.getHeaderValues(HttpHeaders.ACCEPT_LANGUAGE);
        return Language.accepted(wanted == null ? "" : String.join(",", wanted));
    }

    /** The place, but not the message: it could hold the measurements of a person. */
    private static void log(Exception exception) {
        LOG.error(
                "Failed to answer: {}{}",
                exception.getClass().getName(),
                Stream.of(exception.getStackTrace())
                        .limit(FRAMES)
                        .map(frame -> "\n\tat " + frame)
                        .collect(Collectors.joining()));
    }
}
