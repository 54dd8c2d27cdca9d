package org.capwright;

import java.io.ByteArrayOutputStream;
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
import java.util.Set;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.capwright.exchange.dxf.PointGrading;
import org.capwright.lay.MaterialNeed;
import org.capwright.lay.Materials;
import org.capwright.quantity.Unit;
import org.capwright.report.LayPicture;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** Every form of some pieces in one archive, with what it holds in words and the SHA-256 sum of every file as {@code sha256sum -c} reads it. */
final class Archive {

    /** The earliest date that an archive can state; it stands for no date. */
    private static final LocalDateTime NO_DATE = LocalDateTime.of(1980, 1, 1, 0, 0);

    /** Of the nine degrees of deflating: takes a third as long as the usual one, for archives a quarter larger. */
    private static final int LEVEL = 2;

    /** Files that are compressed already are stored as they are. */
    private static final Set<String> COMPRESSED = Set.of(".pdf", ".png");

    private final ZipOutputStream zip;
    private final MessageDigest digest;
    private final Language language;
    private final StringBuilder contents = new StringBuilder();
    private final StringBuilder sums = new StringBuilder();

    private Archive(OutputStream to, Language language) {
        this.language = language;
        zip = new ZipOutputStream(to, StandardCharsets.UTF_8);
        zip.setLevel(LEVEL);
        try {
            digest = MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    static void write(Pieces pieces, List<NamedFile> first, OutputStream out) throws IOException {
        String name = pieces.fileName();
        Archive archive = new Archive(out, pieces.patterns().title().language());
        for (NamedFile file : first) {
            archive.add(name + "." + file.ending(), file.content(), Text.of(file.meaning()));
        }
        for (FileFormat format : List.of(FileFormat.SVG, FileFormat.CSV, FileFormat.PDF, FileFormat.HPGL)) {
            archive.add(name + "." + format.ending(), bytes(pieces, format), pieces.meaning(format));
        }
        archive.add(name + "-nest.dxf", bytes(pieces, FileFormat.DXF_NEST), pieces.meaning(FileFormat.DXF_NEST));
        archive.add(name + "-blocks.dxf", bytes(pieces, FileFormat.DXF_BLOCKS), pieces.meaning(FileFormat.DXF_BLOCKS));
        archive.addGraded(pieces, name);
        archive.addLays(pieces, name);
        archive.finish();
    }

    private static byte[] bytes(Pieces pieces, FileFormat format) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
        pieces.write(format, bytes);
        return bytes.toByteArray();
    }

    private void addGraded(Pieces pieces, String name) throws IOException {
        PointGrading grading = PointGrading.of(pieces.patterns());
        add(name + "-graded.dxf", grading.drawing(), Text.of("The base size with numbered grade points, DXF R12."));
        add(name + "-graded.rul", grading.rules().bytes(), Text.of("The grade rules of the numbered points."));
    }

    private void addLays(Pieces pieces, String name) throws IOException {
        Unit unit = pieces.patterns().title().unit();
        List<MaterialNeed> cloths = pieces.materials().map(Materials::cloths).orElse(List.of());
        for (int i = 0; i < cloths.size(); i++) {
            MaterialNeed need = cloths.get(i);
            add(
                    String.format(Locale.ROOT, "%s-lay-%02d.svg", name, i + 1),
                    LayPicture.svg(need.lay(), unit, language).getBytes(StandardCharsets.UTF_8),
                    Text.of("Lay for {pairs}. {cloth}.")
                            .with("pairs", pairs(need.pairs()))
                            .with("cloth", need.lay().fabric().words(unit)));
        }
    }

    private static Text pairs(Map<String, Integer> pairs) {
        List<Text> words = new ArrayList<>();
        pairs.forEach((size, count) ->
                words.add(Text.of("{count} of size {size}").with("count", count).with("size", size)));
        return Text.joined(words, ", ");
    }

    private void add(String name, byte[] bytes, Text meaning) throws IOException {
        put(name, bytes);
        say(Text.of("{file}: {meaning}")
                .with("file", name)
                .with("meaning", meaning)
                .in(language));
    }

    private void say(String line) {
        contents.append(line).append('\n');
    }

    private void put(String name, byte[] bytes) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_DATE);
        if (COMPRESSED.stream().anyMatch(name::endsWith)) {
            CRC32 sum = new CRC32();
            sum.update(bytes);
            entry.setMethod(ZipEntry.STORED);
            entry.setSize(bytes.length);
            entry.setCrc(sum.getValue());
        }
        zip.putNextEntry(entry);
        zip.write(bytes);
        zip.closeEntry();
        sums.append(HexFormat.of().formatHex(digest.digest(bytes)))
                .append("  ")
                .append(name)
                .append('\n');
    }

    private void finish() throws IOException {
        put("contents.txt", contents.toString().getBytes(StandardCharsets.UTF_8));
        put("SHA256SUMS", sums.toString().getBytes(StandardCharsets.UTF_8));
        zip.finish();
    }
}
