package org.capwright.service.sizerun;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.capwright.export.dxf.DxfExport;
import org.capwright.export.dxf.PointGrading;
import org.capwright.measure.InvalidMeasuresException;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** Every form of the run in one archive. The same run gives the same bytes: no clock is read. */
@Component
@Order(9)
final class ZipRendering implements Rendering {

    private static final MediaType ZIP = new MediaType("application", "zip");

    /** The earliest date that an archive can state; it stands for no date. */
    private static final LocalDateTime NO_DATE = LocalDateTime.of(1980, 1, 1, 0, 0);

    private final ObjectProvider<Rendering> renderings;

    ZipRendering(ObjectProvider<Rendering> renderings) {
        this.renderings = renderings;
    }

    @Override
    public MediaType mediaType() {
        return ZIP;
    }

    @Override
    public String extension() {
        return "zip";
    }

    @Override
    public String meaning() {
        return "All of the forms as files: the nest as SVG and DXF, DXF blocks, the base size as DXF with its grade rule table where"
                + " the points can be matched, PDF, and the spec table.";
    }

    @Override
    public byte[] render(SizeRunResult result) throws IOException {
        String name = FileNames.base(result.order());
        List<String> contents = new ArrayList<>();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 20);
        try (ZipOutputStream zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            for (Rendering rendering : renderings.orderedStream().toList()) {
                if (rendering instanceof ZipRendering || rendering instanceof DxfRendering) {
                    continue;
                }
                add(zip, contents, name + "." + rendering.extension(), rendering.render(result), rendering.meaning());
            }
            addDrawings(zip, contents, name, result);
            put(zip, "contents.txt", (String.join("\n", contents) + "\n").getBytes(StandardCharsets.UTF_8));
        }
        return bytes.toByteArray();
    }

    private static void addDrawings(ZipOutputStream zip, List<String> contents, String name, SizeRunResult result)
            throws IOException {
        add(
                zip,
                contents,
                name + "-nest.dxf",
                DxfExport.nest(result.patterns(), result.order().alignment()),
                "All sizes of each piece over one another, DXF R12.");
        add(
                zip,
                contents,
                name + "-blocks.dxf",
                DxfExport.blocks(result.patterns()),
                "One block per piece and size, DXF R12.");
        PointGrading grading;
        try {
            grading = PointGrading.of(result.patterns());
        } catch (InvalidMeasuresException e) {
            contents.add("There is no grade rule table, as the pieces do not have the same points in every size.");
            return;
        }
        add(
                zip,
                contents,
                name + "-graded.dxf",
                grading.drawing(),
                "The base size with numbered grade points, DXF R12.");
        add(zip, contents, name + "-graded.rul", grading.rules().bytes(), "The grade rules of the numbered points.");
    }

    private static void add(ZipOutputStream zip, List<String> contents, String name, byte[] bytes, String meaning)
            throws IOException {
        put(zip, name, bytes);
        contents.add(name + ": " + meaning);
    }

    private static void put(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_DATE);
        zip.putNextEntry(entry);
        zip.write(bytes);
        zip.closeEntry();
    }
}
