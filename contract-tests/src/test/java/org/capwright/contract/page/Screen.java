package org.capwright.contract.page;

/** A screen that the page is tried on, in CSS pixels. */
enum Screen {
    DESKTOP(1280, 800),
    PHONE(360, 740);

    private final int width;
    private final int height;

    Screen(int width, int height) {
        this.width = width;
        this.height = height;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    @Override
    public String toString() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
