package org.capwright.service.sizerun;

import java.io.IOException;
import org.springframework.http.MediaType;

/** One form in which a size run can be answered. */
public interface SizeRunFormat {

    /**
     * The media type, without parameters.
     *
     * @return for example {@code text/csv}
     */
    MediaType mediaType();

    /**
     * The content type that is sent.
     *
     * @return the media type, with parameters where they say more
     */
    default MediaType contentType() {
        return mediaType();
    }

    /**
     * The end of the file name.
     *
     * @return without the dot
     */
    String extension();

    /**
     * What the answer holds, for the API description.
     *
     * @return one or two sentences
     */
    String meaning();

    /**
     * Whether the form shows pieces. Where it does not, none is drafted for it, unless cloths or a plotter's roll are to take them.
     *
     * @return false for a form of figures alone
     */
    default boolean takesPieces() {
        return true;
    }

    /**
     * Writes a run; the same run gives the same bytes.
     *
     * @param result the drafted run
     * @return the body of the answer
     * @throws IOException if it cannot be written
     * @throws org.capwright.quantity.InvalidMeasuresException if the run cannot be written in this form, with what would work
     */
    byte[] render(SizeRunResult result) throws IOException;
}
