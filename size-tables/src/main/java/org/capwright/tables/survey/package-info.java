/**
 * Growth of the arm in public surveys of women and of men, and what can be said from it with which certainty.
 *
 * <p>Three questions look alike and have different answers; {@link org.capwright.tables.survey.Regression} keeps them
 * apart by name and by type:
 *
 * <ul>
 *   <li><b>By how much does the mean arm grow from one class to the next?</b> Slope times step, with a
 *       {@link org.capwright.tables.survey.ConfidenceInterval}. Narrow, as thousands were measured. This is the figure to
 *       hold a grade jump against.
 *   <li><b>What arm has one new wearer of this bust and stature?</b> A
 *       {@link org.capwright.tables.survey.PredictionInterval}. Wide, as people differ. This is the figure to question a
 *       measurement with.
 *   <li><b>By how much do the arms of two people differ who are one class apart?</b> A prediction interval again, and
 *       wider still, as both of them scatter.
 * </ul>
 *
 * <p>The model is a straight line with scatter of equal spread (ordinary least squares). The surveyed are soldiers of the
 * US Army of 1988 and 2012; the shares and intervals hold for people like them. Outside the surveyed range nothing is
 * said but by the methods that are named for it, which widen their intervals and whose callers have to say so.
 *
 * <p>Whether all measurements of one wearer go together is a fourth question: see
 * {@link org.capwright.tables.survey.JointDistribution}.
 *
 * <p>Regressions need only the sums in a small file, or of the men the published means, deviations and correlations. The
 * per-person rows of the women are read when coverage is asked for, and not before.
 */
package org.capwright.tables.survey;
