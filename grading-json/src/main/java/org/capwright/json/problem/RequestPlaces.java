package org.capwright.json.problem;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.capwright.check.Threshold;
import org.capwright.draft.CapFit;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject;
import org.capwright.quantity.Subject;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.TableSubject;

/** Where the subjects that the engine names stand in a request, as JSON pointers (RFC 6901). The one place that knows both. */
public final class RequestPlaces {

    /** Where everything stands that one request alone does not decide. */
    public static final RequestPlaces USUAL = new RequestPlaces("", "/sleeve/capEase", "/overlay/pleats/depth", "", "");

    /** Between forty sizes. */
    private static final int MOST_INTERVALS = 39;

    private final String root;
    private final String capEase;
    private final String pleatDepth;

    private final String frontZone;
    private final String backZone;

    private RequestPlaces(String root, String capEase, String pleatDepth, String frontZone, String backZone) {
        this.root = root;
        this.capEase = capEase;
        this.pleatDepth = pleatDepth;
        this.frontZone = frontZone;
        this.backZone = backZone;
    }

    /**
     * The places of a style: an ease or a flat zone may be given for the halves apart, a depth as the greatest.
     *
     * @param style what was asked for
     * @return the places in its request
     */
    public static RequestPlaces of(SleeveStyle style) {
        boolean greatest = style.overlay()
                .flatMap(OverlayStyle::pleats)
                .filter(plan -> plan.sizing() instanceof PleatSizing.ByGreatestDepth)
                .isPresent();
        boolean zones = style.overlay()
                .flatMap(OverlayStyle::pleats)
                .filter(plan -> plan.flatZoneFront() != plan.flatZoneBack())
                .isPresent();
        return new RequestPlaces(
                "",
                style.fit() instanceof CapFit.HalvesFor ? "/sleeve/front/capEase" : USUAL.capEase,
                greatest ? "/overlay/pleats/greatestDepth" : USUAL.pleatDepth,
                zones ? "/front" : "",
                zones ? "/back" : "");
    }

    /**
     * The same places in a request that holds this one as a field.
     *
     * @param pointer where the field stands
     * @return the places in the whole
     */
    public RequestPlaces within(String pointer) {
        return new RequestPlaces(pointer + root, capEase, pleatDepth, frontZone, backZone);
    }

    /**
     * The place of a subject.
     *
     * @param subject what a violation is about
     * @return a JSON pointer; of the whole request where no field has it
     */
    public String of(Subject subject) {
        if (subject instanceof RequestField field) {
            return field.pointer();
        }
        if (subject instanceof SleeveSubject sleeve) {
            return root + place(sleeve);
        }
        if (subject instanceof TableSubject table) {
            return root + place(table);
        }
        if (subject instanceof Threshold threshold) {
            return root + "/thresholds/" + threshold.key();
        }
        return subject instanceof BodyDimension dimension ? root + "/wearer/" + dimension.id() : root;
    }

    /**
     * What stands at a place.
     *
     * @param pointer a JSON pointer
     * @return the measure, option or increment of the sleeve whose place it is; nothing for any other place
     */
    public Optional<SleeveSubject> subject(String pointer) {
        Stream<SleeveSubject> measures = Arrays.stream(Dimension.values());
        Stream<SleeveSubject> growths = Arrays.stream(Dimension.values()).map(SleeveSubject.GradeOf::new);
        Stream<SleeveSubject> intervals = Arrays.stream(Dimension.values())
                .flatMap(dimension -> IntStream.range(0, MOST_INTERVALS)
                        .mapToObj(interval -> new SleeveSubject.GrowthAt(dimension, interval)));
        Stream<SleeveSubject> options = Arrays.stream(SleeveSubject.Option.values());
        Stream<SleeveSubject> edges =
                Stream.of("armhole", "attachedEdge", "sideSeam", "hem").map(SleeveSubject.AllowanceOf::new);
        return Stream.of(measures, growths, intervals, options, edges)
                .flatMap(subjects -> subjects)
                .filter(subject -> of(subject).equals(pointer))
                .findFirst();
    }

    private String place(SleeveSubject subject) {
        if (subject instanceof Dimension dimension) {
            return place(dimension);
        }
        if (subject instanceof SleeveSubject.Option option) {
            return place(option);
        }
        if (subject instanceof SleeveSubject.GradeOf rule) {
            return "/grade/" + rule.dimension().gradeName();
        }
        if (subject instanceof SleeveSubject.GrowthAt growth) {
            return "/grade/" + growth.dimension().gradeName() + "/" + growth.interval();
        }
        if (subject instanceof SleeveSubject.AllowanceOf allowance) {
            return "/seamAllowance/" + allowance.edge();
        }
        if (subject instanceof SleeveSubject.PairsOf pairs) {
            return "/materials/order/" + escaped(pairs.label());
        }
        if (subject instanceof SleeveSubject.Cloth cloth) {
            return "/materials/fabrics/" + cloth.position() + "/"
                    + cloth.figure().code();
        }
        return subject instanceof SleeveSubject.ClothFigure ? "/materials/fabrics" : "";
    }

    private String place(Dimension dimension) {
        return dimension == Dimension.PLEAT_DEPTH ? pleatDepth : group(dimension) + "/" + field(dimension);
    }

    /**
     * The name of the field of a dimension, which the field of another half or piece may have as well.
     *
     * @param dimension which
     * @return for example {@code capHeight}
     */
    public static String field(Dimension dimension) {
        String name = dimension.gradeName();
        return switch (dimension) {
            case OVERLAY_LENGTH -> "length";
            case PLEAT_DEPTH -> "depth";
            case FRONT_WIDTH, FRONT_CAP_OUTWARD, FRONT_CAP_INWARD, FRONT_ARMHOLE -> small(name.substring(5));
            case BACK_CAP_OUTWARD, BACK_CAP_INWARD -> small(name.substring(4));
            default -> name;
        };
    }

    private static String small(String name) {
        return name.substring(0, 1).toLowerCase(Locale.ROOT) + name.substring(1);
    }

    private static String group(Dimension dimension) {
        return switch (dimension) {
            case BICEP, LENGTH, CAP_HEIGHT, ARMHOLE, CAP_OUTWARD, CAP_INWARD -> "/sleeve";
            case FRONT_WIDTH, FRONT_CAP_OUTWARD, FRONT_CAP_INWARD, FRONT_ARMHOLE -> "/sleeve/front";
            case BACK_CAP_OUTWARD, BACK_CAP_INWARD -> "/sleeve/back";
            case RISE, OVERLAY_LENGTH, SIDE_DEPTH, HEM_SAGITTA, EXTRA_WIDTH, FRONT_GAP, BACK_GAP -> "/overlay";
            case PLEAT_DEPTH -> "/overlay/pleats";
            case ELBOW, WRIST, ELBOW_LEVEL, ELBOW_DART, ELBOW_DART_LENGTH, ELBOW_EASE, HAND_GIRTH -> "/underSleeve";
        };
    }

    private String place(SleeveSubject.Option option) {
        return switch (option) {
            case CAP_EASE -> capEase;
            case FRONT_CAP_EASE -> "/sleeve/front/capEase";
            case BACK_CAP_EASE -> "/sleeve/back/capEase";
            case JOIN, FULLNESS, PLEATS -> "/overlay/" + option.code();
            case TAKE_UP -> "/overlay";
            case PLEAT_COUNT -> "/overlay/pleats/count";
            case FLAT_ZONE_FRONT -> "/overlay/pleats/flatZone" + frontZone;
            case FLAT_ZONE_BACK -> "/overlay/pleats/flatZone" + backZone;
            case UNDER_SLEEVE,
                    SEAM_ALLOWANCE,
                    TURN_OF_CLOTH,
                    INTERFACING_OVERLAP,
                    THICKNESS,
                    SIZES,
                    BASE_SIZE,
                    SIZE_TABLE -> "/" + option.code();
            case WHOLE_SIZE -> "/sizes";
            case PAPER_WIDTH -> "/paper/width";
            case WORN_PICTURE -> "/wornPicture";
            case PAPER_HEIGHT -> "/paper/height";
            case PAPER_SIZES -> "/paper/sizes";
            case PLOTTER_WIDTH -> "/plotter/width";
            case ORDER -> "/materials/order";
            case TRIMMING_WASTE -> "/materials/trimming/waste";
            case TRIMMING_STEP -> "/materials/trimming/step";
        };
    }

    private static String place(TableSubject subject) {
        if (subject instanceof TableSubject.Field field) {
            return "/" + field.code();
        }
        if (subject instanceof TableSubject.Size size) {
            return "/sizes/" + size.position();
        }
        if (subject instanceof TableSubject.RowDimension row) {
            return "/rows/" + row.row() + "/dimension";
        }
        if (subject instanceof TableSubject.RowValues row) {
            return "/rows/" + row.row() + "/values";
        }
        return subject instanceof TableSubject.Figure figure
                ? "/rows/" + figure.row() + "/values/" + figure.size()
                : "";
    }

    /**
     * A name as it stands in a JSON pointer (RFC 6901, section 3).
     *
     * @param name any text
     * @return the text with its slashes and tildes escaped
     */
    public static String escaped(String name) {
        return name.replace("~", "~0").replace("/", "~1");
    }
}
