package org.capwright.json.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.NearestWord;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.schema.SizeLabels;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.tables.RowDraft;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.tables.TableDraft;
import org.capwright.tables.TableKind;
import org.capwright.tables.TableSubject;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads size tables: by id, or of the caller's own. */
public final class TableReader {

    private final String pointer;
    private final FoundViolations found;
    private final RequestObject table;

    private TableReader(JsonNode tree, String pointer, FoundViolations found) {
        this.pointer = pointer;
        this.found = found;
        this.table = new RequestObject(tree, TableSchema.TABLE, pointer, unit(tree), found);
    }

    /**
     * The field {@code sizeTable} of a request: a table that a grade can be compared with.
     *
     * @param body a request that declares the field as {@link TableSchema#ID_OR_TABLE}
     * @param found gathers what is wrong
     * @return the table; none if the field was left out or is wrong
     */
    public static Optional<SizeTable> field(RequestObject body, FoundViolations found) {
        Optional<JsonNode> own = body.raw("sizeTable").filter(JsonNode::isObject);
        if (own.isPresent()) {
            Optional<SizeTable> table = read(own.get(), body.at("sizeTable"), found);
            if (table.isPresent() && !comparable(table.get())) {
                found.add(
                        body.at("sizeTable") + "/kind",
                        "must be body; a grade cannot be checked against garments",
                        "garment");
                return Optional.empty();
            }
            return table;
        }
        Optional<String> id = body.text("sizeTable");
        Optional<SizeTable> table = id.flatMap(TableReader::comparable);
        if (id.isPresent() && table.isEmpty()) {
            body.refuse("sizeTable", unknown(id.get()));
        }
        return table;
    }

    /**
     * A table of the caller's own.
     *
     * @param tree the table
     * @param pointer where it stands, as a JSON pointer
     * @param found gathers everything that is wrong
     * @return the table; none if anything is wrong with it
     */
    public static Optional<SizeTable> read(JsonNode tree, String pointer, FoundViolations found) {
        return new TableReader(tree, pointer, found).read();
    }

    /**
     * A published table that a grade can be compared with.
     *
     * @param id its id
     * @return the table; none if there is none of this id, or it is not of bodies whose sizes a body dimension orders
     */
    public static Optional<SizeTable> comparable(String id) {
        return SizeTables.find(id).filter(TableReader::comparable);
    }

    /**
     * Whether a table can tell how bodies grow from size to size.
     *
     * @param table any table
     * @return true if it is of bodies and a body dimension orders its sizes
     */
    public static boolean comparable(SizeTable table) {
        return table.info().kind() == TableKind.BODY && table.info().key().isPresent();
    }

    /**
     * What is wrong with an id that {@link #comparable(String)} does not find.
     *
     * @param id what was given
     * @return in words, with what was probably meant
     */
    public static Text unknown(String id) {
        List<String> ids = SizeTables.all().stream()
                .filter(TableReader::comparable)
                .map(SizeTable::id)
                .toList();
        if (SizeTables.find(id).isPresent()) {
            return Text.of("is not a body table whose sizes are ordered by a body dimension, so nothing can be checked"
                            + " against it; these are: {tables}")
                    .with("tables", Text.names(ids));
        }
        return NearestWord.to(id, ids)
                .map(near -> Text.of("is not the id of a size table; did you mean {near}?")
                        .with("near", near))
                .orElse(Text.of("is not the id of a size table; there are {tables}")
                        .with("tables", Text.names(ids)));
    }

    /** Millimetres where the unit is wrong, which is said of the unit. */
    private static Unit unit(JsonNode tree) {
        return tree.path("unit").asStringOpt().flatMap(Unit::find).orElse(Unit.MILLIMETRE);
    }

    private Optional<SizeTable> read() {
        FieldType.Labels labels =
                (FieldType.Labels) TableSchema.TABLE.field("sizes").kind();
        Optional<List<String>> sizes =
                table.raw("sizes").flatMap(list -> SizeLabels.read(list, table.at("sizes"), labels, found));
        Optional<String> unit = table.choice("unit");
        Optional<String> key = table.choice("key");
        List<RowDraft> rows = rows();
        TableDraft draft = new TableDraft(
                table.text("id").orElse(TableSchema.DEFAULT_ID),
                table.text("title").orElse(TableSchema.DEFAULT_TITLE),
                table.text("source").orElse(TableSchema.NOT_STATED),
                table.text("licence").orElse(TableSchema.NOT_STATED),
                table.text("figureType").orElse(TableSchema.NOT_STATED),
                table.text("population").orElse(TableSchema.NOT_STATED),
                unit.orElse(""),
                table.choice("kind").filter("garment"::equals).isPresent() ? TableKind.GARMENT : TableKind.BODY,
                key.orElse(""),
                sizes.orElse(List.of()),
                rows);
        try {
            SizeTable built = draft.build();
            return found.names(pointer) || below() ? Optional.empty() : Optional.of(built);
        } catch (InvalidMeasuresException e) {
            e.violations().forEach(violation -> add(violation, sizes.isPresent()));
            return Optional.empty();
        }
    }

    private boolean below() {
        return found.list().stream().anyMatch(violation -> violation.field().startsWith(pointer + "/"));
    }

    private List<RowDraft> rows() {
        List<RowDraft> rows = new ArrayList<>();
        for (RequestObject row : table.objects("rows")) {
            List<OptionalDouble> values = row.gapped("values");
            rows.add(new RowDraft(row.choice("dimension").orElse(""), values));
        }
        return rows;
    }

    /** What follows from a complaint that was made already, or cannot be judged without the sizes, would only be noise. */
    private void add(Violation violation, boolean sized) {
        String where = RequestPlaces.USUAL.within(pointer).of(violation.subject());
        if (!found.names(where) && (sized || !(violation.subject() instanceof TableSubject.RowValues))) {
            found.add(violation, where);
        }
    }
}
