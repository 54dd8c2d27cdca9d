package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.words.Text;

/** A drawing as ASCII DXF of release 12 or later, cut into its parts. Guaranteed not to change. */
public final class DxfDrawing {

    private static final int MOST_BLOCKS = 20_000;
    private static final int MOST_LAYERS = 20_000;

    private final DxfTags tags;
    private final Reading parts;

    /** A block with its base point. */
    record Block(String name, int line, double x, double y, List<DxfEntity> entities) {}

    private DxfDrawing(DxfTags tags, Reading parts) {
        this.tags = tags;
        this.parts = parts;
    }

    /**
     * Cuts a file into its parts.
     *
     * @param file ASCII DXF
     * @return the drawing
     * @throws ForeignInputException if it is no DXF, was cut off, or is larger than is read
     */
    public static DxfDrawing of(ForeignFile file) throws ForeignInputException {
        DxfTags tags = DxfTags.of(file);
        Reading parts = new Reading(tags);
        parts.run();
        return new DxfDrawing(tags, parts);
    }

    /**
     * The file that it was read from.
     *
     * @return the file
     */
    public ForeignFile file() {
        return tags.file();
    }

    /**
     * The unit by the header variable $INSUNITS.
     *
     * @return its value, 0 where it is not there
     */
    public int units() {
        return parts.units;
    }

    /**
     * All texts, those of blocks among them, inserted or not.
     *
     * @return as they stand in the file
     */
    public List<String> texts() {
        return Stream.concat(
                        parts.entities.stream(),
                        parts.blocks.values().stream().flatMap(block -> block.entities().stream()))
                .filter(entity -> entity.type().equals("TEXT") || entity.type().equals("MTEXT"))
                .map(entity -> entity.text(1))
                .toList();
    }

    /**
     * Names of the layers that the drawing declares, whether anything is drawn on them or not.
     *
     * @return as they stand in the file
     */
    public List<String> layers() {
        return List.copyOf(parts.layers);
    }

    /**
     * Names of its blocks, inserted or not.
     *
     * @return in no order
     */
    public List<String> blockNames() {
        return parts.blocks.values().stream().map(Block::name).toList();
    }

    /**
     * What it shows.
     *
     * @param millimetresPerUnit how long one unit of the drawing is
     * @return lines and texts in place, in mm
     * @throws ForeignInputException if an entity is broken, or there are more than are read
     */
    public DxfContent content(double millimetresPerUnit) throws ForeignInputException {
        return DxfExpansion.of(this, millimetresPerUnit);
    }

    /** By name in upper case. */
    Map<String, Block> blocks() {
        return parts.blocks;
    }

    List<DxfEntity> entities() {
        return parts.entities;
    }

    private static final class Reading {
        private final DxfTags tags;
        private final Map<String, Block> blocks = new HashMap<>();
        private final List<String> layers = new ArrayList<>();
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
                    throw tags.error(
                            tags.line(at), Text.of("outside of any section; 0 SECTION or 0 EOF should stand here"));
                }
                section();
                any = true;
            }
            if (!any) {
                throw tags.error(1, Text.of("the drawing is empty"));
            }
        }

        private boolean atZero(String value) {
            return tags.code(at) == 0 && tags.is(at, value);
        }

        private void section() throws ForeignInputException {
            int start = at++;
            if (tags.code(at) != 2) {
                throw tags.error(tags.line(at), Text.of("a section without a name"));
            }
            String name = tags.text(at).toUpperCase(Locale.ROOT);
            at++;
            switch (name) {
                case "HEADER" -> header();
                case "TABLES" -> layers();
                case "BLOCKS" -> blocks();
                case "ENTITIES" -> entities(entities, "ENDSEC");
                default -> skip();
            }
            if (!atZero("ENDSEC")) {
                throw tags.error(
                        tags.line(start),
                        Text.of("section {name} is not ended by ENDSEC")
                                .with("name", ForeignInputException.shown(name)));
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

        private void layers() {
            while (!atZero("ENDSEC") && !atZero("EOF") && !atZero("SECTION")) {
                boolean layer = atZero("LAYER") && layers.size() < MOST_LAYERS;
                at++;
                while (layer && tags.code(at) != 0) {
                    if (tags.code(at) == 2) {
                        layers.add(tags.text(at));
                    }
                    at++;
                }
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
                    throw tags.error(tags.line(at), Text.of("among the blocks, 0 BLOCK or 0 ENDSEC should stand here"));
                }
                DxfEntity head = entity();
                List<DxfEntity> inside = new ArrayList<>();
                entities(inside, "ENDBLK");
                if (!atZero("ENDBLK")) {
                    throw head.error(Text.of("not ended by ENDBLK"));
                }
                entity();
                String name = head.text(2);
                if (name.isEmpty()) {
                    throw head.error(Text.of("without a name"));
                }
                if (blocks.size() == MOST_BLOCKS) {
                    throw head.error(
                            Text.of("more than {most} blocks are not read").with("most", MOST_BLOCKS));
                }
                Block block = new Block(name, head.line(), head.number(10, 0), head.number(20, 0), inside);
                if (blocks.putIfAbsent(name.toUpperCase(Locale.ROOT), block) != null) {
                    throw head.error(
                            Text.of("block {name} is defined twice").with("name", ForeignInputException.shown(name)));
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
                    throw tags.error(tags.line(at), Text.of("a value outside of any entity"));
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
