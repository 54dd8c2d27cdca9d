package org.capwright.export.pdf;

import java.io.FileOutputStream;
import java.util.List;

final class Look {
    public static void main(String[] args) throws Exception {
        var set = ChoirGown.inSizes("Choir gown with shoulder overlay", "36", "38", "40", "42", "44", "46");
        var options = PdfOptions.on(Paper.A4)
                .withSewing(
                        List.of(
                                "Fuse the interfacing to the wrong side of the overlay lining.",
                                "Lay overlay and lining right sides together and sew the hem; clip at the point, turn and press.",
                                "Pleat the top edge to the marks and baste. Set the overlay on the cap of the under-sleeve between its two end notches, then set both into the armhole."),
                        List.of(
                                "Keep flowing sleeves away from open flames, hot plates and running machines. Cloth burns; follow the rules that hold where you are."));
        try (var out = new FileOutputStream("/tmp/w/out/a4.pdf")) {
            PdfExport.write(set, options, out);
        }
        try (var out = new FileOutputStream("/tmp/w/out/letter1.pdf")) {
            PdfExport.write(
                    set,
                    new PdfOptions(
                            Paper.LETTER,
                            List.of("40"),
                            options.alignment(),
                            options.sewingOrder(),
                            options.cautions(),
                            java.util.Optional.empty()),
                    out);
        }
        try (var out = new FileOutputStream("/tmp/w/out/a3.pdf")) {
            PdfExport.write(
                    set,
                    new PdfOptions(
                            Paper.A3,
                            List.of("36", "40", "44"),
                            options.alignment(),
                            options.sewingOrder(),
                            options.cautions(),
                            java.util.Optional.empty()),
                    out);
        }
        try (var out = new FileOutputStream("/tmp/w/out/roll.pdf")) {
            PdfExport.write(
                    set,
                    new PdfOptions(
                            new Paper.Roll(914),
                            List.of(),
                            options.alignment(),
                            options.sewingOrder(),
                            options.cautions(),
                            java.util.Optional.empty()),
                    out);
        }
        String[] ten = {"30", "32", "34", "36", "38", "40", "42", "44", "46", "48"};
        var full = ChoirGown.inSizes("Choir gown", ten);
        for (int i = 0; i < 60; i++) {
            long t = System.nanoTime();
            var bytes = new java.io.ByteArrayOutputStream();
            PdfExport.write(full, options, bytes);
            if (i % 10 == 0 || i == 59) System.out.println((System.nanoTime() - t) / 1e6 + " ms, " + bytes.size());
        }
        try (var out = new FileOutputStream("/tmp/w/out/ten.pdf")) {
            PdfExport.write(full, options, out);
        }
    }
}
