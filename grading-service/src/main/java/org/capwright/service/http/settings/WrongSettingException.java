package org.capwright.service.http.settings;

/** Thrown where the service cannot start with a setting. */
public final class WrongSettingException extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    /**
     * Names the setting.
     *
     * @param message a sentence without its full stop that begins with the setting and says what would do; without its value where that is a secret
     */
    public WrongSettingException(String message) {
        super(message);
    }
}
