package org.capwright.tables;

import java.math.BigDecimal;
import java.util.Optional;

/** A unit in which a table is published. The API itself always speaks millimetres. */
public enum LengthUnit {
    /** Millimetre. */
    MM("mm", 1),
    /** Centimetre. */
    CM("cm", 10),
    /** International inch, 25.4 mm exactly. */
    IN("in", 25.4);

    private final String symbol;
    private final double millimetres;

    LengthUnit(String symbol, double millimetres) {
        this.symbol = symbol;
        this.millimetres = millimetres;
    }

    /**
     * The unit's symbol.
     *
     * @return {@code mm}, {@code cm} or {@code in}
     */
    public String symbol() {
        return symbol;
    }

    /**
     * Converts a length in this unit. The shortest decimal that prints as the value is converted exactly and rounded
     * once, so that 44.4 cm is 444 mm and not a hair beside it.
     *
     * @param value a length in this unit
     * @return the same length in millimetres; not finite if the value is not
     */
    public double toMillimetres(double value) {
        return Double.isFinite(value) ? toMillimetres(BigDecimal.valueOf(value)) : value;
    }

    /**
     * Converts a decimal exactly and rounds once, so that 44.4 cm is 444 mm and not a hair beside it.
     *
     * @param decimal a length in this unit
     * @return the same length in millimetres, to the nearest double
     */
    double toMillimetres(BigDecimal decimal) {
        return decimal.multiply(BigDecimal.valueOf(millimetres)).doubleValue();
    }

    /**
     * Converts a length into this unit.
     *
     * @param value a length in millimetres
     * @return the same length in this unit
     */
    public double fromMillimetres(double value) {
        return value / millimetres;
    }

    /**
     * Finds a unit by its symbol.
     *
     * @param symbol {@code mm}, {@code cm} or {@code in}
     * @return the unit, or empty when the symbol is not known
     */
    public static Optional<LengthUnit> find(String symbol) {
        for (LengthUnit unit : values()) {
            if (unit.symbol.equals(symbol)) {
                return Optional.of(unit);
            }
        }
        return Optional.empty();
    }
}
