package org.capwright.service.http.settings;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Says which setting is wrong, and what would do. */
final class WrongSettingAnalysis extends AbstractFailureAnalyzer<WrongSettingException> {

    static final String ACTION =
            "Change the setting, or leave it out. docs/configuration.md has all of them with what they take.";

    @Override
    protected FailureAnalysis analyze(Throwable failure, WrongSettingException cause) {
        return new FailureAnalysis(cause.getMessage() + ".", ACTION, cause);
    }
}
