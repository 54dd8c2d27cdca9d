package org.capwright.service.sizerun;

import java.util.List;
import java.util.Locale;
import org.capwright.pattern.Bulk;
import org.capwright.pattern.CuttingList;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.SeamPair;
import org.capwright.pattern.Seams;
import org.capwright.pattern.SewingOrder;

/** Shows what the workroom needs beside the pieces. */
final class Workroom {

    private Workroom() {}

    static SizeRunAnswer.WorkroomAnswer of(PatternSet patterns, SewingOrder sewing, UnitFormat shown) {
        List<SizeRunAnswer.CutRowAnswer> cuts = CuttingList.of(patterns).rows().stream()
                .map(row -> new SizeRunAnswer.CutRowAnswer(
                        row.size(),
                        row.piece().id(),
                        row.count(),
                        words(row.laying().name()),
                        words(row.material().name()),
                        shown.area(row.area())))
                .toList();
        List<SizeRunAnswer.SeamAnswer> seams =
                Seams.walk(patterns).stream().map(pair -> seam(pair, shown)).toList();
        List<SizeRunAnswer.BulkAnswer> bulk = Bulk.of(patterns).stream()
                .map(layers -> new SizeRunAnswer.BulkAnswer(
                        layers.size(),
                        layers.main(),
                        layers.lining(),
                        layers.interfacing(),
                        layers.thickness().stream().mapToObj(shown::length).findFirst()))
                .toList();
        return new SizeRunAnswer.WorkroomAnswer(cuts, seams, bulk, sewing.steps());
    }

    private static SizeRunAnswer.SeamAnswer seam(SeamPair pair, UnitFormat shown) {
        return new SizeRunAnswer.SeamAnswer(
                pair.size(),
                shown.say(pair.words()),
                pair.first(),
                shown.length(pair.firstLength()),
                pair.second(),
                shown.length(pair.secondLength()),
                shown.length(pair.ease()),
                shown.length(pair.mismatch()),
                pair.matches());
    }

    private static String words(String constant) {
        return constant.toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
