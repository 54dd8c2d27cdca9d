package org.capwright.service.http.settings;

import java.time.Duration;
import java.time.format.DateTimeParseException;

/** Reads durations of settings. */
public final class Durations {

    private Durations() {}

    /**
     * A duration of a setting.
     *
     * @param setting its name
     * @param text what was given
     * @param example a duration that would do
     * @return the duration, not negative
     * @throws WrongSettingException if the text is none
     */
    public static Duration read(String setting, String text, String example) {
        try {
            Duration duration = Duration.parse(text.strip());
            if (!duration.isNegative()) {
                return duration;
            }
        } catch (DateTimeParseException e) {
            // said below
        }
        throw new WrongSettingException(setting + " must be a duration such as " + example + ", not " + text.strip());
    }
}
