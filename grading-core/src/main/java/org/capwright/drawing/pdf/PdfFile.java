package org.capwright.drawing.pdf;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.capwright.drawing.Appearance;
import org.capwright.geometry.Box;
import org.capwright.quantity.Decimals;
import org.capwright.words.Language;

/** A PDF file in the making. The same pages give the same bytes: no clock is read, and the identifier of the file is made of its content. */
public final class PdfFile {

    private static final double POINT = 25.4 / 72;

    /** Decimals of boxes in points and mm. */
    private static final int RECTANGLE = 4;

    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("yyyyMMddHHmmss'Z'", Locale.ROOT);

    /**
     * A page.
     *
     * @param width with the margins, mm
     * @param height with the margins, mm
     * @param margin free on every side, mm
     * @param content its origin is the upper left corner between the margins
     */
    public record Page(double width, double height, double margin, PdfCanvas content) {}

    private record Bookmark(String words, int page) {}

    private record Form(PdfCanvas content, Box bounds) {}

    /** What a print dialog is asked to do. */
    public enum Scale {
        /** What it usually does. */
        AS_USUAL,
        /** Not to scale. */
        TRUE
    }

    private final Lettering lettering = new Lettering();
    private final Map<String, Form> forms = new LinkedHashMap<>();
    private final Map<String, BufferedImage> pictures = new LinkedHashMap<>();
    private final List<Page> pages = new ArrayList<>();
    private final List<Bookmark> bookmarks = new ArrayList<>();
    private final Layers layers;

    private final Language language;

    /**
     * An empty file.
     *
     * @param language what its words are in
     */
    public PdfFile(Language language) {
        this.language = language;
        layers = new Layers(language);
    }

    /**
     * A canvas for a page or a form of this file.
     *
     * @return an empty one
     */
    public PdfCanvas canvas() {
        return canvas(Appearance.ON_PAPER);
    }

    /**
     * A canvas on which all looks in a way of its own.
     *
     * @param appearance how it looks
     * @return an empty one
     */
    public PdfCanvas canvas(Appearance appearance) {
        return new PdfCanvas(lettering, layers, appearance);
    }

    /**
     * Adds what is drawn on several pages but written once.
     *
     * @param name its name on the pages
     * @param content what is drawn
     * @param bounds nothing outside is shown
     */
    public void form(String name, PdfCanvas content, Box bounds) {
        forms.put(name, new Form(content, bounds));
    }

    /**
     * Adds a picture of dots.
     *
     * @param name its name on the pages
     * @param picture the picture
     */
    public void picture(String name, BufferedImage picture) {
        pictures.put(name, picture);
    }

    /**
     * Adds a page.
     *
     * @param page the page
     */
    public void add(Page page) {
        pages.add(page);
    }

    /**
     * Adds a line of the outline that a viewer shows beside the pages, to go to a page.
     *
     * @param words what is found there
     * @param page number of the page, 0 for the first
     */
    public void bookmark(String words, int page) {
        bookmarks.add(new Bookmark(words, page));
    }

    /**
     * Writes the file.
     *
     * @param title what it is called
     * @param subject what it is
     * @param sizes the sizes in their order, for the list of layers
     * @param created the date that it states; empty for none
     * @param scale what the print dialog is asked to do
     * @param out where it goes; it is not closed
     * @return how many pages it has
     * @throws IOException if it cannot be written
     */
    public int save(
            String title, String subject, List<String> sizes, Optional<Instant> created, Scale scale, OutputStream out)
            throws IOException {
        Fonts fonts = lettering.fonts();
        try (PdfObjects objects = fonts.beginning().copy()) {
            return save(objects, fonts, title, subject, sizes, created, scale, out);
        }
    }

    private int save(
            PdfObjects objects,
            Fonts fonts,
            String title,
            String subject,
            List<String> sizes,
            Optional<Instant> created,
            Scale scale,
            OutputStream out)
            throws IOException {
        Layers.Declared declared = layers.declare(sizes, objects);
        String shared = fonts.resources() + declared.resources();
        String drawn = drawn(objects, "/Resources<<" + shared + ">>");
        String resources = PdfObjects.reference(objects.add("<<" + shared + drawn + ">>"));
        int parent = objects.number();
        List<String> made = pages.stream()
                .map(page -> page(objects, page, parent, resources))
                .toList();
        objects.add(parent, "<</Type/Pages/Count " + made.size() + "/Kids[" + String.join(" ", made) + "]>>");
        int catalog = objects.add("<</Type/Catalog/Pages " + PdfObjects.reference(parent) + declared.catalog()
                + outline(objects, made) + "/ViewerPreferences<<"
                + (scale == Scale.TRUE ? "/PrintScaling/None" : "")
                + "/DisplayDocTitle true>>/Lang" + PdfObjects.text(language.tag()) + ">>");
        int information = objects.add("<</Title" + PdfObjects.text(title) + "/Subject" + PdfObjects.text(subject)
                + "/Creator(Capwright)/Producer(Capwright)"
                + created.map(PdfFile::dates).orElse("") + ">>");
        objects.write(catalog, information, out);
        return made.size();
    }

    /** Forms and pictures, as an entry of a dictionary of resources. */
    private String drawn(PdfObjects objects, String resources) throws IOException {
        StringBuilder drawn = new StringBuilder("/XObject<<");
        forms.forEach((name, form) -> {
            Box bounds = form.bounds();
            String head = "/Type/XObject/Subtype/Form"
                    + rectangle("/BBox", bounds.left(), bounds.bottom(), bounds.right(), bounds.top()) + resources;
            int number = objects.deflate(head, form.content().content());
            drawn.append('/').append(name).append(' ').append(PdfObjects.reference(number));
        });
        for (Map.Entry<String, BufferedImage> entry : pictures.entrySet()) {
            drawn.append('/')
                    .append(entry.getKey())
                    .append(' ')
                    .append(PdfObjects.reference(picture(objects, entry.getValue())));
        }
        return drawn.append(">>").toString();
    }

    private static int picture(PdfObjects objects, BufferedImage picture) throws IOException {
        try (PDDocument scratch = new PDDocument()) {
            return new Transcript(objects)
                    .of(LosslessFactory.createFromImage(scratch, picture).getCOSObject());
        }
    }

    private static String rectangle(String name, double left, double bottom, double right, double top) {
        return DoubleStream.of(left, bottom, right, top)
                .mapToObj(side -> Decimals.text(side, RECTANGLE))
                .collect(Collectors.joining(" ", name + "[", "]"));
    }

    private String page(PdfObjects objects, Page page, int parent, String resources) {
        PdfCanvas head = canvas();
        head.millimetres().move(page.margin, page.height - page.margin);
        int content = objects.deflate("", page.content.contentAfter(head));
        return PdfObjects.reference(objects.add("<</Type/Page/Parent " + PdfObjects.reference(parent)
                + rectangle("/MediaBox", 0, 0, page.width / POINT, page.height / POINT) + "/Resources " + resources
                + "/Contents " + PdfObjects.reference(content) + ">>"));
    }

    /** The outline, shown open, as an entry of the catalog (section 8.2.2). */
    private String outline(PdfObjects objects, List<String> made) {
        if (bookmarks.isEmpty()) {
            return "";
        }
        int outline = objects.number();
        int[] numbers =
                bookmarks.stream().mapToInt(bookmark -> objects.number()).toArray();
        for (int i = 0; i < numbers.length; i++) {
            objects.add(
                    numbers[i],
                    "<</Title" + PdfObjects.text(bookmarks.get(i).words()) + "/Dest["
                            + made.get(bookmarks.get(i).page()) + "/XYZ null null null]/Parent "
                            + PdfObjects.reference(outline)
                            + (i == 0 ? "" : "/Prev " + PdfObjects.reference(numbers[i - 1]))
                            + (i == numbers.length - 1 ? "" : "/Next " + PdfObjects.reference(numbers[i + 1])) + ">>");
        }
        objects.add(
                outline,
                "<</Type/Outlines/First " + PdfObjects.reference(numbers[0]) + "/Last "
                        + PdfObjects.reference(numbers[numbers.length - 1]) + "/Count " + numbers.length + ">>");
        return "/Outlines " + PdfObjects.reference(outline);
    }

    private static String dates(Instant instant) {
        String date = "(D:" + DATE.format(instant.atOffset(ZoneOffset.UTC)) + ")";
        return "/CreationDate" + date + "/ModDate" + date;
    }
}
