package org.capwright;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.capwright.exchange.dxf.PointGrading;
import org.capwright.lay.MaterialNeed;
import org.capwright.lay.Materials;
import org.capwright.quantity.Unit;
import org.capwright.report.LayPicture;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * Every form of some pieces in one archive, with what it holds in words and the SHA-256 sum of every file as {@code sha256sum -c} reads it. The files are made and deflated side by side, unless
 * another archive is being made: then the processors have enough to do, and turns cost a seventh more. The archive is the same either way.
 */
final class Archive {

    /** Archives that are being made. */
    private static final AtomicInteger MAKING = new AtomicInteger();

    private final Pieces pieces;
    private final String name;
    private final Language language;

    /** Makes one file, or several that come of the same work. */
    private interface Work {
        List<PackedFile> done() throws IOException;
    }

    private Archive(Pieces pieces) {
        this.pieces = pieces;
        name = pieces.fileName();
        language = pieces.patterns().title().language();
    }

    static void write(Pieces pieces, List<NamedFile> first, OutputStream out) throws IOException {
        Archive archive = new Archive(pieces);
        List<PackedFile> files = new ArrayList<>(made(archive.works(first)));
        StringBuilder contents = new StringBuilder();
        for (PackedFile file : files) {
            contents.append(Text.of("{file}: {meaning}")
                            .with("file", file.name())
                            .with("meaning", file.meaning())
                            .in(archive.language))
                    .append('\n');
        }
        files.add(listing("contents.txt", contents));
        StringBuilder sums = new StringBuilder();
        for (PackedFile file : files) {
            sums.append(file.sum()).append("  ").append(file.name()).append('\n');
        }
        files.add(listing("SHA256SUMS", sums));
        ZipBytes.write(files, out);
    }

    private static PackedFile listing(String name, StringBuilder lines) {
        return PackedFile.of(name, Text.name(name), lines.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static List<PackedFile> made(List<Work> works) throws IOException {
        boolean alone = MAKING.incrementAndGet() == 1;
        try (Stream<Work> each = alone ? works.parallelStream() : works.stream()) {
            return each.flatMap(work -> done(work).stream()).toList();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        } finally {
            MAKING.decrementAndGet();
        }
    }

    private static List<PackedFile> done(Work work) {
        try {
            return work.done();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<Work> works(List<NamedFile> first) {
        List<Work> works = new ArrayList<>();
        for (NamedFile file : first) {
            works.add(
                    () -> List.of(PackedFile.of(name + "." + file.ending(), Text.of(file.meaning()), file.content())));
        }
        for (FileFormat format : List.of(FileFormat.SVG, FileFormat.CSV, FileFormat.PDF, FileFormat.HPGL)) {
            works.add(() -> List.of(file("." + format.ending(), format)));
        }
        works.add(() -> List.of(file("-nest.dxf", FileFormat.DXF_NEST)));
        works.add(() -> List.of(file("-blocks.dxf", FileFormat.DXF_BLOCKS)));
        works.add(this::graded);
        List<MaterialNeed> cloths = pieces.materials().map(Materials::cloths).orElse(List.of());
        for (int i = 0; i < cloths.size(); i++) {
            String ending = String.format(Locale.ROOT, "-lay-%02d.svg", i + 1);
            MaterialNeed need = cloths.get(i);
            works.add(() -> List.of(lay(ending, need)));
        }
        return works;
    }

    private PackedFile file(String ending, FileFormat format) throws IOException {
        return PackedFile.of(name + ending, pieces.meaning(format), pieces.bytes(format));
    }

    private List<PackedFile> graded() {
        PointGrading grading = PointGrading.of(pieces.patterns());
        return List.of(
                PackedFile.of(
                        name + "-graded.dxf",
                        Text.of("The base size with numbered grade points, DXF R12."),
                        grading.drawing()),
                PackedFile.of(
                        name + "-graded.rul",
                        Text.of("The grade rules of the numbered points."),
                        grading.rules().bytes()));
    }

    private PackedFile lay(String ending, MaterialNeed need) {
        Unit unit = pieces.patterns().title().unit();
        return PackedFile.of(
                name + ending,
                Text.of("Lay for {pairs}. {cloth}.")
                        .with("pairs", pairs(need.pairs()))
                        .with("cloth", need.lay().fabric().words(unit)),
                LayPicture.svg(need.lay(), unit, language).getBytes(StandardCharsets.UTF_8));
    }

    private static Text pairs(Map<String, Integer> pairs) {
        List<Text> words = new ArrayList<>();
        pairs.forEach((size, count) ->
                words.add(Text.of("{count} of size {size}").with("count", count).with("size", size)));
        return Text.joined(words, ", ");
    }
}
