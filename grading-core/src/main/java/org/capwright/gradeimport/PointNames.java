package org.capwright.gradeimport;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.capwright.check.CheckedMeasure;

/** Names of points of measure as the trade writes them (common practice, no source). Only whole names match; nothing is taken by likeness. */
final class PointNames {

    /**
     * What a name was taken for.
     *
     * @param measure the point of measure
     * @param factor 2 where the name says that half is measured
     * @param how in words
     */
    record Match(CheckedMeasure measure, double factor, String how) {}

    private static final Map<String, CheckedMeasure> NAMES = new HashMap<>();
    private static final Pattern HALF =
            Pattern.compile("^(?:1 2|half|halbe|demi) (.+)$|^(.+?) (?:1 2|half|flat half|half width)$");

    static {
        names(
                CheckedMeasure.BICEP,
                "bicep",
                "biceps",
                "bicep width",
                "biceps width",
                "bicep circumference",
                "bicep girth",
                "bicep line",
                "upper arm",
                "upper arm width",
                "upper arm circumference",
                "upper arm girth",
                "upper sleeve width",
                "sleeve width",
                "sleeve width at bicep",
                "sleeve width at underarm",
                "sleeve bicep",
                "muscle",
                "muscle width",
                "upperarm",
                "upperarm width",
                "oberarmweite",
                "tour de bras");
        names(
                CheckedMeasure.LENGTH,
                "length",
                "sleeve length",
                "sleeve length from apex",
                "sleeve length from shoulder point",
                "sleeve length from cap",
                "sleeve length from armhole",
                "overarm",
                "overarm length",
                "sleeve overarm length",
                "sleeve length from top of cap",
                "aermellange",
                "armellange",
                "longueur manche");
        names(
                CheckedMeasure.CAP_HEIGHT,
                "cap height",
                "sleeve cap height",
                "sleeve cap",
                "height of cap",
                "crown height",
                "sleeve crown height",
                "sleeve head height",
                "sleeve head",
                "head height",
                "kugelhohe",
                "armkugelhohe");
        names(
                CheckedMeasure.CAP_LINE,
                "cap line",
                "cap seam",
                "cap seam length",
                "sleeve cap length",
                "sleeve cap line",
                "cap length",
                "sleeve cap seam",
                "cap circumference",
                "sleeve cap circumference",
                "sleeve head seam",
                "crown line",
                "cap curve");
        names(
                CheckedMeasure.ARMHOLE,
                "armhole",
                "armhole seam",
                "armhole circumference",
                "armhole curve",
                "armhole length",
                "armhole girth",
                "armscye",
                "armscye circumference",
                "scye",
                "scye circumference",
                "total armhole",
                "armlochumfang",
                "armhole total");
        names(CheckedMeasure.CAP_EASE, "cap ease", "sleeve ease", "sleeve cap ease", "ease of cap");
        names(
                CheckedMeasure.ELBOW,
                "elbow",
                "elbow width",
                "elbow circumference",
                "elbow girth",
                "sleeve width at elbow",
                "forearm at elbow",
                "ellbogenweite");
        names(
                CheckedMeasure.WRIST,
                "wrist",
                "wrist width",
                "wrist circumference",
                "wrist girth",
                "sleeve opening",
                "sleeve hem",
                "sleeve hem width",
                "sleeve bottom",
                "sleeve bottom width",
                "sleeve bottom opening",
                "cuff opening",
                "bottom opening",
                "hem width",
                "sleeve opening width",
                "saumweite");
        names(CheckedMeasure.RISE, "overlay rise", "rise", "cap rise");
        names(CheckedMeasure.OVERLAY_LENGTH, "overlay length", "length of overlay");
        names(CheckedMeasure.OVERLAY_EDGE, "overlay top edge flat", "overlay top edge", "overlay edge");
        names(CheckedMeasure.ATTACH_SPAN, "attach span", "attached span");
        names(CheckedMeasure.PLEAT_DEPTH, "pleat depth", "depth of pleats");
        names(CheckedMeasure.PLEAT_COUNT, "pleat count", "number of pleats", "pleats");
        names(CheckedMeasure.FRONT_WIDTH, "front width", "front bicep", "front sleeve width", "bicep front");
        names(CheckedMeasure.BACK_WIDTH, "back width", "back bicep", "back sleeve width", "bicep back");
        names(CheckedMeasure.FRONT_CAP_LINE, "front cap line", "front cap", "cap line front", "cap front");
        names(CheckedMeasure.BACK_CAP_LINE, "back cap line", "back cap", "cap line back", "cap back");
    }

    private PointNames() {}

    private static void names(CheckedMeasure measure, String... names) {
        for (String name : names) {
            NAMES.put(name, measure);
        }
    }

    /** What a cell means, or nothing. */
    static Optional<Match> match(String cell) {
        if (cell.isEmpty() || cell.length() > 120) {
            return Optional.empty();
        }
        Optional<CheckedMeasure> code = CheckedMeasure.ofCode(cell.strip());
        if (code.isPresent()) {
            return code.map(measure -> new Match(measure, 1, "its code"));
        }
        String name = normal(UnitWords.without(cell));
        CheckedMeasure measure = NAMES.get(name);
        if (measure != null) {
            return Optional.of(new Match(measure, 1, "a name of the trade"));
        }
        var half = HALF.matcher(name);
        if (half.matches()) {
            CheckedMeasure whole = NAMES.get(half.group(1) == null ? half.group(2) : half.group(1));
            if (whole == CheckedMeasure.BICEP || whole == CheckedMeasure.ELBOW || whole == CheckedMeasure.WRIST) {
                return Optional.of(new Match(whole, 2, "a name of the trade for half of it, so doubled"));
            }
        }
        return Optional.empty();
    }

    /** Lower case without accents; all that is neither letter nor digit is one space. */
    static String normal(String text) {
        String plain = Normalizer.normalize(text.replace("\u00bd", "1/2"), Normalizer.Form.NFD);
        StringBuilder out = new StringBuilder(plain.length());
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            if (Character.isLetterOrDigit(c)) {
                out.append(Character.toLowerCase(c));
            } else if (Character.getType(c) != Character.NON_SPACING_MARK
                    && c != '\''
                    && out.length() > 0
                    && out.charAt(out.length() - 1) != ' ') {
                out.append(' ');
            }
        }
        return out.toString().strip().toLowerCase(Locale.ROOT);
    }
}
