package org.capwright.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.capwright.quantity.Violation;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.BodyProportion;
import org.capwright.words.Text;

/** What no body has, whoever it is: a wrist larger than the arm, an arm longer than the wearer. It holds for women, men and children, with a survey or without one. */
public final class ProportionOpinion {

    private ProportionOpinion() {}

    /**
     * The measurements that contradict one another. The one that contradicts most others is questioned alone; where two contradict only each other, both are.
     *
     * @param given the wearer's measurements, mm
     * @param confirmed what was measured again and is not questioned
     * @param questioned what is questioned already, which explains what contradicts it
     * @return a question for each, with the range that the others leave it
     */
    public static List<Violation> questions(
            Map<BodyDimension, Double> given, Set<BodyDimension> confirmed, Set<BodyDimension> questioned) {
        Set<BodyDimension> doubted = EnumSet.noneOf(BodyDimension.class);
        List<BodyProportion> broken = new ArrayList<>(BodyProportion.ALL.stream()
                .filter(each -> !each.holds(given)
                        && !questioned.contains(each.part())
                        && !questioned.contains(each.whole())
                        && !confirmed.containsAll(List.of(each.part(), each.whole())))
                .toList());
        while (!broken.isEmpty()) {
            Map<BodyDimension, Integer> often = new EnumMap<>(BodyDimension.class);
            broken.forEach(each -> {
                often.merge(each.part(), 1, Integer::sum);
                often.merge(each.whole(), 1, Integer::sum);
            });
            int most = Collections.max(often.values());
            List<BodyDimension> worst = often.entrySet().stream()
                    .filter(each -> each.getValue() == most)
                    .map(Map.Entry::getKey)
                    .toList();
            // One that contradicts most others and was confirmed explains them: it is set aside.
            worst.stream().filter(each -> !confirmed.contains(each)).forEach(doubted::add);
            broken.removeIf(each -> worst.contains(each.part()) || worst.contains(each.whole()));
        }
        return doubted.stream().map(dimension -> question(dimension, given)).toList();
    }

    private static Violation question(BodyDimension dimension, Map<BodyDimension, Double> given) {
        double least = dimension.plausible().lower();
        double greatest = dimension.plausible().upper();
        List<String> against = new ArrayList<>();
        for (BodyProportion each : BodyProportion.ALL) {
            Double part = given.get(each.part());
            Double whole = given.get(each.whole());
            if (part == null || whole == null || each.holds(given)) {
                continue;
            }
            if (each.part() == dimension) {
                greatest = Math.min(greatest, each.greatest() * whole);
                against.add(each.whole().id());
            } else if (each.whole() == dimension) {
                least = Math.max(least, part / each.greatest());
                against.add(each.part().id());
            }
        }
        return Violation.lengthOutside(
                dimension,
                Text.of("no body has it beside the given {others}: measure again, or name it in confirmed")
                        .with(
                                "others",
                                against.stream()
                                        .map(Text::of)
                                        .reduce((first, second) -> Text.of("{first} and {second}")
                                                .with("first", first)
                                                .with("second", second))
                                        .orElse(Text.name(""))),
                given.getOrDefault(dimension, Double.NaN),
                Math.min(least, greatest),
                Math.max(least, greatest));
    }
}
