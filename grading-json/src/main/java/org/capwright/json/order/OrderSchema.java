package org.capwright.json.order;

import java.util.List;
import java.util.stream.Stream;
import org.capwright.json.madetomeasure.MeasureSchema;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestSchema;
import org.capwright.json.schema.SchemaField;
import org.capwright.json.style.SizeRunSchema;
import org.capwright.words.Language;

/** An order, and a line of a batch. */
public final class OrderSchema {

    /** Greatest number of characters of the shop's own name for an order. */
    public static final int LONGEST_REFERENCE = 40;

    /** The files that are drawn of an order, by the ends of their names, in the order of a list of all. */
    public static final List<String> FILES = List.of("json", "svg", "dxf", "csv", "pdf", "plt");

    private static final int LONGEST_ID = 36;

    /** What a remake takes from the first order where it says nothing itself. */
    static final List<String> OF_WEARER = List.of("wearer", "ease", "sleeve", "confirmed", "survey", "sizeTable");

    /** The same of what stands on its files, and of which there are. */
    static final List<String> OF_FILES = List.of("reference", "language", "files");

    /** An order. */
    public static final RequestSchema ORDER = RequestSchema.of(
            "Order",
            "An order on a kept style: by a size of its run, or by the measurements of a wearer. Lengths are in the"
                    + " unit of the style. A field that is null counts as left out; an unknown field is refused.",
            List.of(
                    SchemaField.optional(
                                    "reference",
                                    new FieldType.Text(LONGEST_REFERENCE),
                                    "The shop's own name for the order, found again by GET /v1/orders; with"
                                            + " measurements it is written on every piece. A number written as a text will do; no name"
                                            + " of a person is needed.")
                            .example("order 1207"),
                    SchemaField.optional(
                                    "size",
                                    SizeRunSchema.REQUEST.field("baseSize").kind(),
                                    "A size of the style. Left out where wearer is given.")
                            .example("40"),
                    measure("wearer", "Left out where size is given."),
                    measure("confirmed", ""),
                    measure("survey", ""),
                    measure("sizeTable", ""),
                    SchemaField.optional(
                            "ease",
                            MeasureSchema.REQUEST.field("ease").kind(),
                            "What the finished sleeve measures more than the body; that of the style if left out."),
                    measure("sleeve", "What is given here goes before what the style says."),
                    SchemaField.optional(
                            "units",
                            SizeRunSchema.REQUEST.field("units").kind(),
                            "Unit of every length; it must be that of the style, and may be left out."),
                    SchemaField.optional(
                                    "language",
                                    new FieldType.Choice(Language.all().stream()
                                            .map(Language::tag)
                                            .toList()),
                                    "What labels, sewing order and the other words of its files are in; as"
                                            + " Accept-Language asks if left out.")
                            .example("fr"),
                    SchemaField.optional(
                                    "files",
                                    new FieldType.Words(FILES),
                                    "The files that are drawn and kept, which takes less time and room than all of"
                                            + " them; no other can be fetched later. Those of the first order for a"
                                            + " remake, else every one, if left out.")
                            .example(List.of("pdf", "dxf")),
                    SchemaField.optional(
                            "revision",
                            new FieldType.Whole(1, 1_000_000),
                            "Number of the revision that is made; that of the first order for a remake, else the"
                                    + " latest, if left out."),
                    SchemaField.optional(
                            "remakeOf",
                            new FieldType.Text(LONGEST_ID),
                            "Id of an order on this style that is made again. What is left out here, also a single"
                                    + " measurement, is taken from it.")));

    /** An order with the style that it is on. */
    public static final RequestSchema BATCH_LINE = RequestSchema.of(
            "BatchOrder",
            "One line of a batch: an order, with the style that it is on.",
            Stream.concat(
                            ORDER.fields().values().stream(),
                            Stream.of(
                                    SchemaField.required("style", new FieldType.Text(64), "Id of the kept style.")
                                            .example("choir-gown"),
                                    SchemaField.optional(
                                                    "idempotencyKey",
                                                    new FieldType.Text(200),
                                                    "What Idempotency-Key is to an order by itself. None if left out.")
                                            .example("shop-1207")))
                    .toList());

    private OrderSchema() {}

    private static SchemaField measure(String field, String more) {
        SchemaField shared = MeasureSchema.REQUEST.field(field);
        return SchemaField.optional(field, shared.kind(), (shared.meaning() + " " + more).strip());
    }
}
