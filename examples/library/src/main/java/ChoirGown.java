import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.capwright.GradeRules;
import org.capwright.Pieces;
import org.capwright.StructuredSleeve;
import org.capwright.grade.Sizes;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Unit;
import org.capwright.tables.SizeTables;

/** The sleeve of a choir gown in sizes 36 to 46: nest, spec table, what to look at before cutting, and gown.dxf in the folder where it is run. */
public final class ChoirGown {

    private ChoirGown() {}

    public static void main(String[] arguments) throws IOException {
        StructuredSleeve gown = StructuredSleeve.named("Choir gown sleeve", Unit.CENTIMETRE)
                .sleeve(sleeve -> sleeve.bicep(36).length(60).capHeight(13.5).capOutward(1.9).capInward(1.2).armhole(45))
                .overlay(overlay -> overlay.rise(14).length(34).frontGap(6).backGap(6)
                        .pleats(pleats -> pleats.count(8).knifeTowardApex()))
                .underSleeve(under -> under.elbow(30).wrist(22));
        GradeRules rules = GradeRules.in(Unit.CENTIMETRE)
                .grow(Dimension.BICEP, 1.3).grow(Dimension.LENGTH, 0.5).grow(Dimension.CAP_HEIGHT, 0.4)
                .grow(Dimension.ARMHOLE, 1.5).grow(Dimension.RISE, 0.2).grow(Dimension.OVERLAY_LENGTH, 1.1)
                .grow(Dimension.ELBOW, 0.8).grow(Dimension.WRIST, 0.5);
        Sizes sizes = Sizes.withBase("40", "36", "38", "40", "42", "44", "46");
        Pieces pieces = gown.grade(rules, sizes)
                .pieces(finish -> finish.seamAllowance(1).sideSeamAllowance(1.5).hemAllowance(2));
        pieces.writeCsv(System.out);
        pieces.check(SizeTables.find("women-en-13402-3-bust").orElseThrow())
                .forEach(finding -> System.out.println(finding.text(Unit.CENTIMETRE)));
        try (OutputStream dxf = Files.newOutputStream(Path.of("gown.dxf"));
                OutputStream svg = Files.newOutputStream(Path.of("gown.svg"))) {
            pieces.writeSvg(svg);
            pieces.writeDxf(dxf);
        }
    }
}
