package org.capwright.service.sizerun;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.capwright.exchange.dxf.DxfExport;
import org.capwright.exchange.dxf.PointGrading;
import org.capwright.lay.MaterialNeed;
import org.capwright.lay.Materials;
import org.capwright.measure.InvalidMeasuresException;
import org.capwright.measure.Unit;
import org.capwright.report.LayPicture;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** Every form of the run in one archive. The same run gives the same bytes: no clock is read. */
@Component
@Order(9)
final class ZipFormat implements SizeRunFormat {

    private static final MediaType ZIP = new MediaType("application", "zip");

    /** The earliest date that an archive can state; it stands for no date. */
    private static final LocalDateTime NO_DATE = LocalDateTime.of(1980, 1, 1, 0, 0);

    private final ObjectProvider<SizeRunFormat> renderings;

    ZipFormat(ObjectProvider<SizeRunFormat> renderings) {
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
                + " the points can be matched, HP-GL, PDF, the spec table, and the lays where materials were asked for.";
    }

    @Override
    public byte[] render(SizeRunResult result) throws IOException {
        String name = FileNames.base(result.order());
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 20);
        try (Archive archive = new Archive(bytes)) {
            for (SizeRunFormat rendering : renderings.orderedStream().toList()) {
                if (rendering instanceof ZipFormat || rendering instanceof DxfFormat) {
                    continue;
                }
                archive.add(name + "." + rendering.extension(), rendering.render(result), rendering.meaning(result));
            }
            addDrawings(archive, name, result);
            addLays(archive, name, result);
        }
        return bytes.toByteArray();
    }

    private static void addDrawings(Archive archive, String name, SizeRunResult result) throws IOException {
        archive.add(
                name + "-nest.dxf",
                DxfExport.nest(result.patterns(), result.order().alignment()),
                "All sizes of each piece over one another, DXF R12.");
        archive.add(
                name + "-blocks.dxf", DxfExport.blocks(result.patterns()), "One block per piece and size, DXF R12.");
        PointGrading grading;
        try {
            grading = PointGrading.of(result.patterns());
        } catch (InvalidMeasuresException e) {
            archive.say("There is no grade rule table, as the pieces do not have the same points in every size.");
            return;
        }
        archive.add(name + "-graded.dxf", grading.drawing(), "The base size with numbered grade points, DXF R12.");
        archive.add(name + "-graded.rul", grading.rules().bytes(), "The grade rules of the numbered points.");
    }

    private static void addLays(Archive archive, String name, SizeRunResult result) throws IOException {
        List<MaterialNeed> cloths = result.materials().map(Materials::cloths).orElse(List.of());
        for (int i = 0; i < cloths.size(); i++) {
            MaterialNeed need = cloths.get(i);
            Unit unit = result.order().unit();
            archive.add(
                    String.format(Locale.ROOT, "%s-lay-%02d.svg", name, i + 1),
                    LayPicture.svg(need.lay(), unit).getBytes(StandardCharsets.UTF_8),
                    "Lay for " + pairs(need.pairs()) + ". "
                            + need.lay().fabric().words(unit) + ".");
        }
    }

    private static String pairs(Map<String, Integer> pairs) {
        List<String> words = new ArrayList<>();
        pairs.forEach((size, count) -> words.add(count + " of size " + size));
        return String.join(", ", words);
    }

    /** An archive in the making. Closing it adds what it holds in words, and the SHA-256 sum of every file as {@code sha256sum -c} reads it. */
    private static final class Archive implements Closeable {
        private final ZipOutputStream zip;
        private final MessageDigest digest;
        private final StringBuilder contents = new StringBuilder();
        private final StringBuilder sums = new StringBuilder();

        Archive(OutputStream to) {
            zip = new ZipOutputStream(to, StandardCharsets.UTF_8);
            try {
                digest = MessageDigest.getInstance("SHA-256");
            } catch (NoSuchAlgorithmException e) {
                throw new IllegalStateException("every Java platform has SHA-256", e);
            }
        }

        void add(String name, byte[] bytes, String meaning) throws IOException {
            put(name, bytes);
            say(name + ": " + meaning);
        }

        void say(String line) {
            contents.append(line).append('\n');
        }

        private void put(String name, byte[] bytes) throws IOException {
            ZipEntry entry = new ZipEntry(name);
            entry.setTimeLocal(NO_DATE);
            zip.putNextEntry(entry);
            zip.write(bytes);
            zip.closeEntry();
            sums.append(HexFormat.of().formatHex(digest.digest(bytes)))
                    .append("  ")
                    .append(name)
                    .append('\n');
        }

        @Override
        public void close() throws IOException {
            put("contents.txt", contents.toString().getBytes(StandardCharsets.UTF_8));
            put("SHA256SUMS", sums.toString().getBytes(StandardCharsets.UTF_8));
            zip.close();
        }
    }
}
