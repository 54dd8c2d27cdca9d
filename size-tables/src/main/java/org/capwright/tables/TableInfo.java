package org.capwright.tables;

import java.util.List;
import java.util.Optional;
import org.capwright.quantity.Unit;

/**
 * What a table is and where it comes from.
 *
 * @param id short name in kebab-case, unique among the tables
 * @param title title for people
 * @param source the publication, bibliographically
 * @param licence under what terms the figures may be used
 * @param readFrom where the figures were read, and how they were checked
 * @param confidence how sure the transcription is
 * @param figureType whom the sizes are made for
 * @param population who was measured or is meant
 * @param unit the unit the table is published in; the API converts to millimetres
 * @param kind body or garment
 * @param statistic what the figures are
 * @param key the dimension that orders the sizes, strictly growing from size to size; empty if there is none
 * @param notes doubts, departures of definition, and what is missing
 */
public record TableInfo(
        String id,
        String title,
        String source,
        String licence,
        String readFrom,
        Confidence confidence,
        String figureType,
        String population,
        Unit unit,
        TableKind kind,
        Statistic statistic,
        Optional<BodyDimension> key,
        List<String> notes) {

    /**
     * Copies the notes.
     *
     * @param id short name in kebab-case, unique among the tables
     * @param title title for people
     * @param source the publication, bibliographically
     * @param licence under what terms the figures may be used
     * @param readFrom where the figures were read, and how they were checked
     * @param confidence how sure the transcription is
     * @param figureType whom the sizes are made for
     * @param population who was measured or is meant
     * @param unit the unit the table is published in; the API converts to millimetres
     * @param kind body or garment
     * @param statistic what the figures are
     * @param key the dimension that orders the sizes, strictly growing from size to size; empty if there is none
     * @param notes doubts, departures of definition, and what is missing
     */
    public TableInfo {
        notes = List.copyOf(notes);
    }
}
