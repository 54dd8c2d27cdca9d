package org.capwright.service.http.access;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Says at the start what is wrong and what to do, instead of a stack trace. */
final class OpenToAllAnalysis extends AbstractFailureAnalyzer<OpenToAllException> {

    @Override
    protected FailureAnalysis analyze(Throwable failure, OpenToAllException cause) {
        return new FailureAnalysis(
                cause.getMessage(),
                "Turn keys on: set capwright.operator-key (or CAPWRIGHT_OPERATOR_KEY) to a secret of 32 characters or"
                        + " more. Or leave server.address at 127.0.0.1, and let a proxy on this machine that has a log-in"
                        + " pass requests on.",
                cause);
    }
}
