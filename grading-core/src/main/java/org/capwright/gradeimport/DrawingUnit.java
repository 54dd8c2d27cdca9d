package org.capwright.gradeimport;

import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.dxf.DxfDrawing;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;

/** How long one unit of a drawing is. */
final class DrawingUnit {

    private static final Pattern STATED = Pattern.compile("(?i)\\s*units\\s*[:=]\\s*([a-z]+)\\s*");
    /** Values of $INSUNITS: inch, foot, millimetre, centimetre, metre, decimetre. */
    private static final Map<Integer, Double> HEADER = Map.of(1, 25.4, 2, 304.8, 4, 1.0, 5, 10.0, 6, 1000.0, 14, 100.0);

    private DrawingUnit() {}

    /** Millimetres per unit: as the sender says, else by a text UNITS, else by the header. */
    static double of(DxfDrawing drawing, ForeignOptions options, ImportNotes traces) throws ForeignInputException {
        Optional<Double> stated = stated(drawing, traces);
        if (options.unit().isPresent()) {
            Unit given = options.unit().get();
            double size = given.toMillimetres(1);
            if (stated.isPresent() && stated.get() != size) {
                traces.assumed(
                        0,
                        ImportNote.FILE,
                        Text.of("read in {unit} as asked, although the drawing states another unit")
                                .with("unit", given.symbol()));
            }
            return size;
        }
        return stated.orElseThrow(() -> new ForeignInputException(
                drawing.file().name(),
                0,
                Text.of("the drawing states no unit, neither by a text UNITS: METRIC or UNITS: ENGLISH nor by"
                        + " $INSUNITS; give mm, cm or in")));
    }

    private static Optional<Double> stated(DxfDrawing drawing, ImportNotes traces) throws ForeignInputException {
        Set<Double> found = new LinkedHashSet<>();
        drawing.texts().forEach(text -> stated(text, found));
        if (found.size() > 1) {
            throw new ForeignInputException(
                    drawing.file().name(), 0, Text.of("its texts state two different units; give mm, cm or in"));
        }
        Optional<Double> header = Optional.ofNullable(HEADER.get(drawing.units()));
        if (found.isEmpty()) {
            header.ifPresent(size -> traces.found(
                    0,
                    ImportNote.FILE,
                    Text.of("unit of {size} mm, by its header")
                            .with("size", Text.figures(Unit.MILLIMETRE.format(size)))));
            return header;
        }
        double text = found.iterator().next();
        traces.found(
                0,
                ImportNote.FILE,
                Text.of("unit of {size} mm, by its text UNITS")
                        .with("size", Text.figures(Unit.MILLIMETRE.format(text))));
        if (header.isPresent() && header.get() != text) {
            traces.assumed(
                    0, ImportNote.FILE, Text.of("its header states another unit, which is passed over for the text"));
        }
        return Optional.of(text);
    }

    private static void stated(String text, Set<Double> found) {
        Matcher matcher = STATED.matcher(text.length() > 40 ? "" : text);
        if (matcher.matches()) {
            switch (matcher.group(1).toUpperCase(Locale.ROOT)) {
                case "METRIC", "MM", "MILLIMETRES", "MILLIMETERS" -> found.add(1.0);
                case "CM", "CENTIMETRES", "CENTIMETERS" -> found.add(10.0);
                case "ENGLISH", "IMPERIAL", "INCH", "INCHES", "IN" -> found.add(25.4);
                default -> {
                    // another text that begins like one about units
                }
            }
        }
    }
}
