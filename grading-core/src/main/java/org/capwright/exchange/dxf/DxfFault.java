package org.capwright.exchange.dxf;

/** What can be wrong with a DXF R12 file. */
public enum DxfFault {
    /** A line does not end with CR LF. */
    LINE_ENDING,
    /** A byte outside 7-bit ASCII, or a control character in a value. */
    NOT_ASCII,
    /** A string of more than 255 characters. */
    LONG_STRING,
    /** A line that should hold a group code holds none. */
    GROUP_CODE,
    /** A value that should be a fixed-point number is none, or is not finite. */
    NUMBER,
    /** A value that should be a whole number is none. */
    WHOLE_NUMBER,
    /** A group code that R12 does not have. */
    NEWER_GROUP_CODE,
    /** The file ends in the middle of something, or without EOF. */
    TRUNCATED,
    /** Something stands after EOF. */
    AFTER_END,
    /** A section is out of order, given twice, unknown, not ended, or something stands outside any. */
    SECTION_ORDER,
    /** Tables are out of order: a line type must be defined before the layer that uses it. */
    TABLE_ORDER,
    /** The version is not AC1009. */
    VERSION,
    /** The extents in the header are not those of what is drawn. */
    EXTENTS,
    /** A name has more than 31 characters or others than A-Z, 0-9, {@code $}, {@code _} and {@code -}. */
    NAME,
    /** A name is defined twice. */
    DUPLICATE_NAME,
    /** An entity without a layer. */
    NO_LAYER,
    /** A layer that no table defines. */
    UNDEFINED_LAYER,
    /** A line type that no table defines. */
    UNDEFINED_LINE_TYPE,
    /** A text style that no table defines. */
    UNDEFINED_TEXT_STYLE,
    /** An insert of a block that is not defined. */
    UNDEFINED_BLOCK,
    /** A block that contains itself. */
    BLOCK_CYCLE,
    /** An entity that R12 does not have. */
    NOT_R12,
    /** A value that the entity must have is missing. */
    MISSING_VALUE,
    /** A polyline without group code 66, which says that vertices follow. */
    NO_VERTICES_FLAG,
    /** A polyline of fewer than two vertices. */
    FEW_VERTICES,
    /** A closed polyline that repeats its first point. */
    REPEATED_FIRST_POINT,
    /** A polyline without SEQEND, or a vertex or SEQEND outside a polyline. */
    SEQUENCE,
    /** Some entities have handles and some have none. */
    MIXED_HANDLES
}
