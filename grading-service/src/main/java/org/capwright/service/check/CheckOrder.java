package org.capwright.service.check;

import java.util.List;
import org.capwright.check.CheckedGrade;
import org.capwright.check.foreign.Trace;
import org.capwright.measure.Unit;
import org.capwright.service.sizerun.FindingAnswer;

/**
 * A grade that was checked.
 *
 * @param name name of the style
 * @param unit unit of the answer
 * @param grade what was checked
 * @param findings what was found
 * @param traces how a file was understood; empty for a size run
 */
record CheckOrder(String name, Unit unit, CheckedGrade grade, List<FindingAnswer> findings, List<Trace> traces) {}
