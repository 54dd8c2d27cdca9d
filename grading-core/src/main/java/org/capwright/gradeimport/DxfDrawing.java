package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The parts of a drawing that matter here.
 *
 * @param tags all pairs
 * @param units value of the header variable $INSUNITS, 0 where it is not there
 * @param blocks by name in upper case
 * @param entities the drawing itself
 */
record DxfDrawing(DxfTags tags, int units, Map<String, Block> blocks, List<DxfEntity> entities) {

    static final int MOST_BLOCKS = 20_000;

    /** A block with its base point. */
    record Block(String name, int line, double x, double y, List<DxfEntity> entities) {}

    static DxfDrawing of(DxfTags tags) throws ForeignInputException {
        Reading reading = new Reading(tags);
        reading.run();
        return new DxfDrawing(tags, reading.units, reading.blocks, reading.entities);
    }

    ForeignFile file() {
        return tags.file();
    }

    private static final class Reading {
        private final DxfTags tags;
        private final Map<String, Block> blocks = new HashMap<>();
        private final List<DxfEntity> entities = new ArrayList<>();
        private int units;
        private int at;

        Reading(DxfTags tags) {
            this.tags = tags;
        }

        void run() throws ForeignInputException {
            boolean any = false;
            while (!atZero("EOF")) {
                if (tags.code(at) == 999) {
                    at++;
                    continue;
                }
                if (!atZero("SECTION")) {
                    throw tags.error(tags.line(at), "outside of any section; 0 SECTION or 0 EOF should stand here");
                }
                section();
                any = true;
            }
            if (!any) {
                throw tags.error(1, "the drawing is empty");
            }
        }

        private boolean atZero(String value) {
            return tags.code(at) == 0 && tags.is(at, value);
        }

        private void section() throws ForeignInputException {
            int start = at++;
            if (tags.code(at) != 2) {
                throw tags.error(tags.line(at), "a section without a name");
            }
            String name = tags.text(at).toUpperCase(Locale.ROOT);
            at++;
            switch (name) {
                case "HEADER" -> header();
                case "BLOCKS" -> blocks();
                case "ENTITIES" -> entities(entities, "ENDSEC");
                default -> skip();
            }
            if (!atZero("ENDSEC")) {
                throw tags.error(
                        tags.line(start), "section " + ForeignInputException.shown(name) + " is not ended by ENDSEC");
            }
            at++;
        }

        private void header() throws ForeignInputException {
            while (tags.code(at) != 0) {
                if (tags.code(at) == 9 && tags.is(at, "$INSUNITS") && tags.code(at + 1) == 70) {
                    units = tags.whole(at + 1);
                }
                at++;
            }
        }

        private void skip() {
            while (!atZero("ENDSEC") && !atZero("EOF") && !atZero("SECTION")) {
                at++;
            }
        }

        private void blocks() throws ForeignInputException {
            while (!atZero("ENDSEC")) {
                if (!atZero("BLOCK")) {
                    throw tags.error(tags.line(at), "among the blocks, 0 BLOCK or 0 ENDSEC should stand here");
                }
                DxfEntity head = entity();
                List<DxfEntity> inside = new ArrayList<>();
                entities(inside, "ENDBLK");
                if (!atZero("ENDBLK")) {
                    throw head.error("not ended by ENDBLK");
                }
                entity();
                String name = head.text(2);
                if (name.isEmpty()) {
                    throw head.error("without a name");
                }
                if (blocks.size() == MOST_BLOCKS) {
                    throw head.error("more than " + MOST_BLOCKS + " blocks are not read");
                }
                Block block = new Block(name, head.line(), head.number(10, 0), head.number(20, 0), inside);
                if (blocks.putIfAbsent(name.toUpperCase(Locale.ROOT), block) != null) {
                    throw head.error("block " + ForeignInputException.shown(name) + " is defined twice");
                }
            }
        }

        private void entities(List<DxfEntity> into, String end) throws ForeignInputException {
            while (!atZero(end) && !atZero("EOF") && !atZero("ENDSEC") && !atZero("SECTION")) {
                if (tags.code(at) == 0) {
                    into.add(entity());
                } else if (tags.code(at) == 999) {
                    at++;
                } else {
                    throw tags.error(tags.line(at), "a value outside of any entity");
                }
            }
        }

        private DxfEntity entity() {
            int from = at++;
            while (tags.code(at) != 0) {
                at++;
            }
            return new DxfEntity(tags, tags.text(from).toUpperCase(Locale.ROOT), from, at);
        }
    }
}
