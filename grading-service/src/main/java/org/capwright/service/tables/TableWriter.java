package org.capwright.service.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.capwright.quantity.Unit;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.DimensionCurve;
import org.capwright.tables.Interval;
import org.capwright.tables.Row;
import org.capwright.tables.SizeTable;
import org.capwright.tables.TableInfo;
import org.capwright.tables.TableValue;

/** Turns tables into answers, lengths in the unit asked for. */
final class TableWriter {

    private final Unit unit;

    TableWriter(Unit unit) {
        this.unit = unit;
    }

    SizeTableAnswer table(SizeTable table) {
        return new SizeTableAnswer(
                info(table),
                unit.symbol(),
                table.sizes(),
                table.labels(),
                table.people(),
                table.rows().stream().map(row -> row(table, row)).toList());
    }

    /** What the table says at a value of its key, in mm; dimensions with a gap there are left out. */
    SizeTableAnswer.Figures figures(SizeTable table, BodyDimension key, double at) {
        List<SizeTableAnswer.FigureAnswer> figures = new ArrayList<>();
        for (Row row : table.rows()) {
            DimensionCurve curve = table.curve(row.dimension());
            if (curve.ranges().stream().anyMatch(range -> range.contains(at))) {
                TableValue value = curve.at(at);
                figures.add(new SizeTableAnswer.FigureAnswer(
                        row.dimension().id(), length(value.millimetres()), word(value.provenance())));
            }
        }
        return new SizeTableAnswer.Figures(table.id(), key.id(), length(at), unit.symbol(), figures);
    }

    static SizeTableAnswer.Info info(SizeTable table) {
        TableInfo info = table.info();
        return new SizeTableAnswer.Info(
                info.id(),
                info.title(),
                info.source(),
                info.licence(),
                info.readFrom(),
                word(info.confidence()),
                info.figureType(),
                info.population(),
                info.unit().symbol(),
                word(info.kind()),
                word(info.statistic()),
                info.key().map(BodyDimension::id),
                table.rows().stream().map(row -> row.dimension().id()).toList(),
                info.notes());
    }

    private SizeTableAnswer.RowAnswer row(SizeTable table, Row row) {
        List<SizeTableAnswer.ValueAnswer> values = new ArrayList<>();
        for (String size : table.sizes()) {
            Optional<TableValue> value = row.value(size);
            if (value.isPresent()) {
                Optional<Interval> limits = Optional.ofNullable(row.limits().get(size));
                values.add(new SizeTableAnswer.ValueAnswer(
                        size,
                        length(value.get().millimetres()),
                        limits.map(range -> length(range.lower())),
                        limits.map(range -> length(range.upper())),
                        word(value.get().provenance())));
            }
        }
        return new SizeTableAnswer.RowAnswer(
                row.dimension().id(),
                row.dimension().definition(),
                values,
                table.increments(row.dimension()).stream()
                        .map(step -> new SizeTableAnswer.IncrementAnswer(
                                step.fromSize(), step.toSize(), length(step.millimetres()), word(step.provenance())))
                        .toList(),
                row.tolerance().isPresent() ? Optional.of(length(row.tolerance().getAsDouble())) : Optional.empty());
    }

    private double length(double millimetres) {
        return unit.figure(millimetres);
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
