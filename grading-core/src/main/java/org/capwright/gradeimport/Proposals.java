package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.capwright.check.CheckedMeasure;
import org.capwright.words.Text;

/** What a row of another name may be, by the likeness of its words to names that are known, and of its figures to what is usual beside the rows that were read. Proposed, never used unasked. */
final class Proposals {

    /** Usual shares of the bicep (common practice, no source). */
    private static final Map<CheckedMeasure, Double> SHARES = Map.of(
            CheckedMeasure.BICEP, 1.0,
            CheckedMeasure.LENGTH, 1.65,
            CheckedMeasure.CAP_HEIGHT, 0.385,
            CheckedMeasure.ARMHOLE, 1.26,
            CheckedMeasure.CAP_LINE, 1.35,
            CheckedMeasure.ELBOW, 0.81,
            CheckedMeasure.WRIST, 0.55);

    private static final double ALIKE = 0.7;
    private static final double NEAR = 0.13;
    private static final int MOST = 2;

    private record Ranked(CheckedMeasure measure, double distance, Text why) {}

    private Proposals() {}

    static List<UnreadRow.Proposal> of(TableContext.Unnamed row, Map<CheckedMeasure, Double> known) {
        List<Ranked> ranked = new ArrayList<>();
        byWords(row.name(), known.keySet(), ranked);
        byFigures(row.figures(), known, ranked);
        ranked.sort(Comparator.comparingDouble(Ranked::distance));
        Map<CheckedMeasure, UnreadRow.Proposal> found = new EnumMap<>(CheckedMeasure.class);
        List<UnreadRow.Proposal> list = new ArrayList<>();
        for (Ranked each : ranked) {
            UnreadRow.Proposal proposal = new UnreadRow.Proposal(each.measure, each.why);
            if (list.size() < MOST && found.putIfAbsent(each.measure, proposal) == null) {
                list.add(proposal);
            }
        }
        return list;
    }

    private static void byWords(String name, Set<CheckedMeasure> taken, List<Ranked> ranked) {
        String plain = PointNames.normal(UnitWords.without(name));
        Map<CheckedMeasure, Ranked> best = new EnumMap<>(CheckedMeasure.class);
        if (plain.length() < 3 || plain.length() > 60) {
            return;
        }
        PointNames.names().forEach((known, measure) -> {
            int longest = Math.max(known.length(), plain.length());
            boolean within = known.length() > 4 && plain.contains(known);
            double alike = within ? 0.8 : 1 - (double) edits(plain, known) / longest;
            if (alike >= ALIKE && !taken.contains(measure)) {
                best.merge(
                        measure,
                        new Ranked(
                                measure,
                                1 - alike,
                                Text.of("its name is near \u201c{name}\u201d").with("name", known)),
                        (a, b) -> a.distance <= b.distance ? a : b);
            }
        });
        ranked.addAll(best.values());
    }

    private static void byFigures(List<Double> figures, Map<CheckedMeasure, Double> known, List<Ranked> ranked) {
        if (figures.isEmpty()) {
            return;
        }
        double[] sorted =
                figures.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double middle = sorted[sorted.length / 2];
        double[] scales = SHARES.entrySet().stream()
                .filter(share -> known.containsKey(share.getKey()))
                .mapToDouble(share -> known.getOrDefault(share.getKey(), 0.0) / share.getValue())
                .sorted()
                .toArray();
        double bicep = scales.length == 0 ? 360 : scales[scales.length / 2];
        SHARES.forEach((measure, share) -> {
            double apart = Math.abs(Math.log(middle / (bicep * share)));
            if (!known.containsKey(measure) && middle > 0 && apart < NEAR) {
                ranked.add(new Ranked(
                        measure,
                        0.2 + apart,
                        Text.of(
                                scales.length == 0
                                        ? "its figures are usual for it"
                                        : "its figures stand to those of the other rows as is usual for it")));
            }
        });
    }

    /** How many letters must be changed, put in or taken out (Levenshtein 1966). */
    private static int edits(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int corner = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int above = row[j];
                int change = corner + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, Math.min(row[j], row[j - 1]) + 1);
                corner = above;
            }
        }
        return row[b.length()];
    }
}
