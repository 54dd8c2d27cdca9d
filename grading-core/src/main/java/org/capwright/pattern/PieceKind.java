package org.capwright.pattern;

/** The pieces of a structured sleeve. */
public enum PieceKind {
    /** The overlay in main cloth. */
    OVERLAY_MAIN("overlay-main", "Overlay", Material.MAIN),
    /** The lining of the overlay. */
    OVERLAY_LINING("overlay-lining", "Overlay lining", Material.LINING),
    /** The interfacing of the overlay. */
    OVERLAY_INTERFACING("overlay-interfacing", "Overlay interfacing", Material.INTERFACING),
    /** The long under-sleeve. */
    UNDER_SLEEVE("under-sleeve", "Under-sleeve", Material.MAIN),
    /** The plain sleeve down to the bicep line, of a style with neither overlay nor under-sleeve. */
    BASE_SLEEVE("base-sleeve", "Sleeve", Material.MAIN);

    private final String id;
    private final String words;
    private final Material material;

    PieceKind(String id, String words, Material material) {
        this.id = id;
        this.words = words;
        this.material = material;
    }

    /**
     * A short name for files and requests.
     *
     * @return for example {@code overlay-main}
     */
    public String id() {
        return id;
    }

    /**
     * The name for people.
     *
     * @return for example {@code Overlay lining}
     */
    public String words() {
        return words;
    }

    /**
     * What it is cut from.
     *
     * @return the material
     */
    public Material material() {
        return material;
    }
}
