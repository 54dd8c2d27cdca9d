package org.capwright.json.madetomeasure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.capwright.check.Estimate;
import org.capwright.check.NearestSize;
import org.capwright.check.SurveyOpinion;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.tables.BodyDimension;
import org.capwright.words.Language;

/**
 * A made-to-measure order, read and found consistent.
 *
 * @param run the sleeve as a run of one size
 * @param given what was measured, mm
 * @param confirmed what was measured again
 * @param estimates what was not measured
 * @param opinion what the survey says of the measurements, where one was asked
 * @param nearest the nearest size of the chosen table
 * @param places where the fields of the run come from
 */
public record MeasureRequest(
        SizeRunRequest run,
        Map<BodyDimension, Double> given,
        Set<BodyDimension> confirmed,
        List<Estimate> estimates,
        Optional<SurveyOpinion> opinion,
        Optional<NearestSize> nearest,
        DerivedPlaces places) {

    /**
     * The same order in a language.
     *
     * @param language of labels and sheets
     * @return the order
     */
    public MeasureRequest in(Language language) {
        return new MeasureRequest(run.in(language), given, confirmed, estimates, opinion, nearest, places);
    }
}
