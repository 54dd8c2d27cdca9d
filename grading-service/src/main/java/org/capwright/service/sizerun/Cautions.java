package org.capwright.service.sizerun;

import java.util.List;

/** What to beware of with wide sleeves. Common practice, no source; local rules and those who are licensed to apply them come first. */
final class Cautions {

    static final List<String> WORDS = List.of(
            "Keep wide and flowing sleeves away from open flames, stoves and moving machines; choose cloth with its"
                    + " flammability in mind.",
            "On children's wear avoid cords and small trims; they can strangle or be swallowed.",
            "Rules for flammability, cords and small parts differ by place: follow the local ones and ask those who are"
                    + " licensed to apply them.");

    private Cautions() {}
}
