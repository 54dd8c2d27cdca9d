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
    BASE_SLEEVE("base-sleeve", "Sleeve", Material.MAIN),
    /** A tape that holds the closed top edge of the overlay to its length. */
    OVERLAY_STAY("overlay-stay", "Stay of the top edge", Material.LINING),
    /** A bias strip that rounds the head of the sleeve. */
    SLEEVE_HEAD("sleeve-head", "Stay of the sleeve head", Material.INTERFACING),
    /** A bias strip that binds the armhole seam. */
    ARMHOLE_STRIP("armhole-strip", "Armhole strip", Material.LINING);

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
     * Whether it is a straight strip.
     *
     * @return true for stays and the armhole strip
     */
    public boolean isStrip() {
        return this == OVERLAY_STAY || this == SLEEVE_HEAD || this == ARMHOLE_STRIP;
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
