package org.capwright.drawing.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.List;
import java.util.zip.CRC32;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** Saves pages of one size that are read, not cut. The same pages give the same bytes: no date, and an identifier made of the content. */
final class PlainDocument {

    private static final double POINT = 25.4 / 72;

    private PlainDocument() {}

    static void save(
            String title, String subject, Paper.Sheets paper, List<Canvas> pages, Lettering lettering, OutputStream out)
            throws IOException {
        try (PDDocument document = new PDDocument()) {
            document.setVersion(1.6f);
            PDResources resources = new PDResources();
            CRC32 sum = new CRC32();
            for (Canvas page : pages) {
                Canvas whole = new Canvas(lettering);
                whole.save()
                        .millimetres()
                        .move(Paper.MARGIN, paper.height() - Paper.MARGIN)
                        .append(page)
                        .restore();
                byte[] content = whole.bytes();
                sum.update(content);
                PDPage made =
                        new PDPage(new PDRectangle((float) (paper.width() / POINT), (float) (paper.height() / POINT)));
                made.setResources(resources);
                made.setContents(new PDStream(document, new ByteArrayInputStream(content), COSName.FLATE_DECODE));
                document.addPage(made);
            }
            lettering.embed(document, resources);
            PDDocumentInformation information = new PDDocumentInformation();
            information.setTitle(title);
            information.setSubject(subject);
            information.setCreator("Capwright");
            information.setProducer("Capwright");
            document.setDocumentInformation(information);
            document.setDocumentId(sum.getValue());
            PDViewerPreferences preferences = new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
            preferences.setDisplayDocTitle(true);
            document.getDocumentCatalog().setViewerPreferences(preferences);
            document.getDocumentCatalog().setLanguage("en");
            document.save(out, CompressParameters.NO_COMPRESSION);
        }
    }
}
