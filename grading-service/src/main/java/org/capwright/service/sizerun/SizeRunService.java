package org.capwright.service.sizerun;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.service.http.Accepted;
import org.capwright.service.http.EntityTag;
import org.capwright.service.http.meters.TradeMeters;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;

/** Drafts what was read and answers in the form that the caller likes best. */
@Component
public final class SizeRunService {

    private final Map<MediaType, SizeRunFormat> renderings = new LinkedHashMap<>();

    SizeRunService(List<SizeRunFormat> renderings) {
        for (SizeRunFormat rendering : renderings) {
            this.renderings.put(rendering.contentType(), rendering);
        }
    }

    /**
     * The form that the caller likes best.
     *
     * @param request a request with or without an Accept header
     * @return the form
     * @throws ProblemException if none of the forms is accepted
     */
    public SizeRunFormat accepted(HttpServletRequest request) {
        MediaType type = Accepted.best(request, renderings.keySet());
        SizeRunFormat rendering = renderings.get(type);
        if (rendering == null) {
            throw new IllegalStateException("no rendering for " + type);
        }
        return rendering;
    }

    /**
     * The form that the path names, for programs that ask for a file and not for a type.
     *
     * @param format the end of a file's name, such as pdf
     * @return the form
     * @throws ProblemException if there is none of this name
     */
    public SizeRunFormat named(String format) {
        return renderings.values().stream()
                .filter(form -> form.extension().equals(format))
                .findFirst()
                .orElseThrow(() -> new ProblemException(Problem.of(
                        ProblemKind.NOT_FOUND,
                        Text.of("There is no format of this name; there are {formats}.")
                                .with(
                                        "formats",
                                        Text.names(renderings.values().stream()
                                                .map(SizeRunFormat::extension)
                                                .toList())))));
    }

    /**
     * Every form.
     *
     * @return in the order in which they are offered
     */
    public List<SizeRunFormat> forms() {
        return List.copyOf(renderings.values());
    }

    /**
     * Drafts every size.
     *
     * @param order what is asked for
     * @return the run with its pieces
     * @throws RefusedRequestException if a size cannot be drafted, with everything that is wrong at the fields of the request
     */
    public static SizeRunResult draft(SizeRunRequest order) {
        try {
            TradeMeters.drafted(order.sizes().size());
            return SizeRunResult.of(order);
        } catch (InvalidMeasuresException e) {
            throw order.refused(e);
        }
    }

    /**
     * Drafts as much of a run as a form of the answer takes.
     *
     * @param order what is asked for
     * @param rendering the form
     * @return the run
     * @throws RefusedRequestException if it cannot be drafted, with everything that is wrong at the fields of the request
     */
    public static SizeRunResult draft(SizeRunRequest order, SizeRunFormat rendering) {
        boolean pieces = rendering.takesPieces()
                || order.materials().isPresent()
                || order.plotterWidth().isPresent();
        try {
            TradeMeters.drafted(order.sizes().size());
            return pieces ? SizeRunResult.of(order) : SizeRunResult.graded(order);
        } catch (InvalidMeasuresException e) {
            throw order.refused(e);
        }
    }

    /**
     * Writes a run.
     *
     * @param result a drafted run
     * @param rendering the form
     * @return the body of the answer
     * @throws IOException if it cannot be written
     * @throws RefusedRequestException if the run cannot be written in this form
     */
    public static byte[] written(SizeRunResult result, SizeRunFormat rendering) throws IOException {
        try {
            byte[] body = rendering.render(result);
            if (rendering.mediaType().equals(MediaType.APPLICATION_PDF)) {
                TradeMeters.drawn(result.pages());
            }
            return body;
        } catch (InvalidMeasuresException e) {
            throw result.order().refused(e);
        }
    }

    /**
     * The run as it is answered in JSON.
     *
     * @param result a drafted run
     * @return everything there is
     * @throws RefusedRequestException if the run cannot be written in this form
     */
    public static SizeRunAnswer answer(SizeRunResult result) {
        try {
            return JsonFormat.answer(result);
        } catch (InvalidMeasuresException e) {
            throw result.order().refused(e);
        }
    }

    /**
     * The answer with its headers. The same bytes have the same entity tag.
     *
     * @param order what was asked for; it names the file
     * @param rendering the form
     * @param body the written run
     * @return an answer that is not to be stored on the way
     */
    public static ResponseEntity<byte[]> response(SizeRunRequest order, SizeRunFormat rendering, byte[] body) {
        return ResponseEntity.ok()
                .contentType(rendering.contentType())
                .eTag(EntityTag.of(body))
                .cacheControl(CacheControl.noStore())
                .varyBy(HttpHeaders.ACCEPT, HttpHeaders.ACCEPT_LANGUAGE)
                .header(HttpHeaders.CONTENT_DISPOSITION, FileNames.disposition(order, rendering.extension()))
                .body(body);
    }
}
