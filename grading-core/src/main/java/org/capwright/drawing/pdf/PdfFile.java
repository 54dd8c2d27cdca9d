package org.capwright.drawing.pdf;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.LosslessFactory;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.capwright.drawing.Appearance;
import org.capwright.geometry.Box;
import org.capwright.words.Language;

/** A PDF file in the making. The same pages give the same bytes: no clock is read, and the identifier of the file is made of its content. */
public final class PdfFile {

    private static final double POINT = 25.4 / 72;

    /** Of the nine degrees of deflating: takes a quarter as long as the usual one, for files a twelfth larger. */
    private static final int LEVEL = 2;

    private static final int BUFFER = 16 * 1024;

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
     * @throws IOException if it cannot be written
     */
    public void save(
            String title, String subject, List<String> sizes, Optional<Instant> created, Scale scale, OutputStream out)
            throws IOException {
        try (PDDocument document = new PDDocument()) {
            document.setVersion(1.6f);
            PDResources fonts = new PDResources();
            PDResources resources = new PDResources();
            CRC32 sum = new CRC32();
            for (Map.Entry<String, Form> entry : forms.entrySet()) {
                PDFormXObject form = new PDFormXObject(
                        stream(document, entry.getValue().content().bytes(), sum));
                Box bounds = entry.getValue().bounds();
                form.setBBox(
                        new PDRectangle((float) bounds.left(), (float) bounds.bottom(), (float) bounds.width(), (float)
                                bounds.height()));
                form.setResources(fonts);
                resources.put(COSName.getPDFName(entry.getKey()), form);
            }
            for (Map.Entry<String, BufferedImage> entry : pictures.entrySet()) {
                resources.put(
                        COSName.getPDFName(entry.getKey()),
                        LosslessFactory.createFromImage(document, entry.getValue()));
            }
            for (Page page : pages) {
                PdfCanvas whole = canvas();
                whole.save();
                whole.millimetres().move(page.margin, page.height - page.margin);
                whole.append(page.content).restore();
                PDPage made = new PDPage(new PDRectangle((float) (page.width / POINT), (float) (page.height / POINT)));
                made.setResources(resources);
                made.setContents(stream(document, whole.bytes(), sum));
                document.addPage(made);
            }
            lettering.embed(document, fonts, resources);
            layers.declare(document, sizes, fonts, resources);
            outline(document);
            describe(document, title, subject, created, scale);
            document.setDocumentId(sum.getValue());
            document.save(out, CompressParameters.NO_COMPRESSION);
        }
    }

    private void outline(PDDocument document) {
        if (bookmarks.isEmpty()) {
            return;
        }
        PDDocumentOutline outline = new PDDocumentOutline();
        for (Bookmark bookmark : bookmarks) {
            PDOutlineItem item = new PDOutlineItem();
            item.setTitle(bookmark.words());
            item.setDestination(document.getPage(bookmark.page()));
            outline.addLast(item);
        }
        outline.openNode();
        document.getDocumentCatalog().setDocumentOutline(outline);
    }

    private static PDStream stream(PDDocument document, byte[] content, CRC32 sum) throws IOException {
        sum.update(content);
        PDStream stream = new PDStream(document);
        Deflater deflater = new Deflater(LEVEL);
        try (OutputStream raw = stream.getCOSObject().createRawOutputStream();
                OutputStream deflated = new DeflaterOutputStream(raw, deflater, BUFFER)) {
            deflated.write(content);
        } finally {
            deflater.end();
        }
        stream.setFilters(List.of(COSName.FLATE_DECODE));
        return stream;
    }

    private void describe(PDDocument document, String title, String subject, Optional<Instant> created, Scale scale) {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(title);
        information.setSubject(subject);
        information.setCreator("Capwright");
        information.setProducer("Capwright");
        created.ifPresent(instant -> {
            GregorianCalendar date = GregorianCalendar.from(instant.atZone(ZoneOffset.UTC));
            information.setCreationDate(date);
            information.setModificationDate(date);
        });
        document.setDocumentInformation(information);
        PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
        if (scale == Scale.TRUE) {
            preferences.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
        }
        preferences.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(preferences);
        document.getDocumentCatalog().setLanguage(language.tag());
    }
}
