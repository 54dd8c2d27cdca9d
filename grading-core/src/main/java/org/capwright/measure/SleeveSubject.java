package org.capwright.measure;

import org.capwright.quantity.Subject;

/** What of a style, its run, its paper or its cloth a violation or a finding speaks of. */
public sealed interface SleeveSubject extends Subject
        permits Dimension,
                SleeveSubject.Option,
                SleeveSubject.GradeOf,
                SleeveSubject.GrowthAt,
                SleeveSubject.PairsOf,
                SleeveSubject.Seam,
                SleeveSubject.AllowanceOf,
                SleeveSubject.Cloth,
                SleeveSubject.ClothFigure {

    /** What there is once in a style or a run. */
    enum Option implements SleeveSubject {
        /** Cap line less armhole, where it was asked for. */
        CAP_EASE("capEase"),
        /** The same for the front half alone. */
        FRONT_CAP_EASE("frontCapEase"),
        /** The same for the back half alone. */
        BACK_CAP_EASE("backCapEase"),
        /** Where the raised line joins the cap line. */
        JOIN("join"),
        /** Top edge of the overlay over the span it covers, where it was asked for. */
        FULLNESS("fullness"),
        /** Top edge of the overlay less the span it covers. */
        TAKE_UP("takeUp"),
        /** The pleats as a whole. */
        PLEATS("pleats"),
        /** Number of pleats. */
        PLEAT_COUNT("pleatCount"),
        /** The part of the seam without pleats, in front of the shoulder point. */
        FLAT_ZONE_FRONT("flatZoneFront"),
        /** The part of the seam without pleats, behind the shoulder point. */
        FLAT_ZONE_BACK("flatZoneBack"),
        /** The under-sleeve as a whole. */
        UNDER_SLEEVE("underSleeve"),
        /** Allowance beyond the net line. */
        SEAM_ALLOWANCE("seamAllowance"),
        /** What the lining is shorter by at the hem. */
        TURN_OF_CLOTH("turnOfCloth"),
        /** What the interfacing reaches into the allowance. */
        INTERFACING_OVERLAP("interfacingOverlap"),
        /** How thick the cloths are. */
        THICKNESS("thickness"),
        /** The sizes of the run. */
        SIZES("sizes"),
        /** The size that the rules start from. */
        BASE_SIZE("baseSize"),
        /** All figures of a size. */
        WHOLE_SIZE("size"),
        /** The bodies that a grade is compared with. */
        SIZE_TABLE("sizeTable"),
        /** Width of the paper. */
        PAPER_WIDTH("paperWidth"),
        /** A picture of the sleeve as it is worn. */
        WORN_PICTURE("wornPicture"),
        /** Height of the paper. */
        PAPER_HEIGHT("paperHeight"),
        /** The sizes that are printed. */
        PAPER_SIZES("paperSizes"),
        /** Width that a pen plotter can draw. */
        PLOTTER_WIDTH("plotterWidth"),
        /** Pairs of sleeves per size. */
        ORDER("order"),
        /** Share of trimming added for joins and ends. */
        TRIMMING_WASTE("trimmingWaste"),
        /** The step in which trimming is sold. */
        TRIMMING_STEP("trimmingStep");

        private final String code;

        Option(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }
    }

    /**
     * The grade rule of a dimension.
     *
     * @param dimension which
     */
    record GradeOf(Dimension dimension) implements SleeveSubject {
        @Override
        public String code() {
            return "grade of " + dimension.code();
        }
    }

    /**
     * The growth of a dimension between two neighbouring sizes, where it is not the same between all.
     *
     * @param dimension which
     * @param interval from 0, between the smallest sizes
     */
    record GrowthAt(Dimension dimension, int interval) implements SleeveSubject {
        @Override
        public String code() {
            return "growth " + interval + " of " + dimension.code();
        }
    }

    /**
     * Pairs of sleeves ordered in one size.
     *
     * @param label name of the size
     */
    record PairsOf(String label) implements SleeveSubject {
        @Override
        public String code() {
            return "pairs of size " + label;
        }
    }

    /**
     * Two seam lines that are sewn together.
     *
     * @param code name of the seam
     */
    record Seam(String code) implements SleeveSubject {}

    /**
     * Allowance along one kind of edge.
     *
     * @param edge the kind, for example {@code hem}
     */
    record AllowanceOf(String edge) implements SleeveSubject {
        @Override
        public String code() {
            return "seamAllowance of " + edge;
        }
    }

    /** A figure of a cloth. */
    enum ClothFigure implements SleeveSubject {
        /** Selvedge edge to selvedge edge as bought. */
        WIDTH("width"),
        /** Share of the length that is lost before cutting. */
        SHRINKAGE_LENGTHWISE("shrinkageLengthwise"),
        /** Share of the width that is lost before cutting. */
        SHRINKAGE_CROSSWISE("shrinkageCrosswise"),
        /** Share added to the length. */
        WASTE("waste"),
        /** Width of each selvedge. */
        SELVEDGE("selvedge"),
        /** Least distance between cut lines. */
        GAP("gap"),
        /** The step in which the shop sells. */
        STEP("step");

        private final String code;

        ClothFigure(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }
    }

    /**
     * A figure of one cloth among several.
     *
     * @param position of the cloth, 0 or more
     * @param figure which of its figures
     */
    record Cloth(int position, ClothFigure figure) implements SleeveSubject {
        @Override
        public String code() {
            return figure.code() + " of cloth " + position;
        }
    }
}
