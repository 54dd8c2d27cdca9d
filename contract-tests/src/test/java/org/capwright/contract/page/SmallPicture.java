package org.capwright.contract.page;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;

/** Makes a PNG of a screen small enough for the documentation: a page of flat colours needs few of them. */
final class SmallPicture {

    private static final int COLOURS = 64;

    private SmallPicture() {}

    /** The same picture with the colours that occur most; each of the others becomes the nearest of those. */
    static byte[] of(byte[] png) throws IOException {
        BufferedImage picture = ImageIO.read(new ByteArrayInputStream(png));
        int width = picture.getWidth();
        int[] pixels = picture.getRGB(0, 0, width, picture.getHeight(), null, 0, width);
        Map<Integer, Integer> counts = new HashMap<>();
        for (int pixel : pixels) {
            counts.merge(pixel & 0xffffff, 1, Integer::sum);
        }
        List<Integer> palette = counts.entrySet().stream()
                .sorted(Map.Entry.<Integer, Integer>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(COLOURS)
                .map(Map.Entry::getKey)
                .toList();
        byte[][] parts = new byte[3][palette.size()];
        for (int i = 0; i < palette.size(); i++) {
            for (int part = 0; part < 3; part++) {
                parts[part][i] = (byte) (palette.get(i) >> (16 - 8 * part));
            }
        }
        BufferedImage small = new BufferedImage(
                width,
                picture.getHeight(),
                BufferedImage.TYPE_BYTE_INDEXED,
                new IndexColorModel(8, palette.size(), parts[0], parts[1], parts[2]));
        Map<Integer, Integer> places = new HashMap<>();
        for (int i = 0; i < pixels.length; i++) {
            int place = places.computeIfAbsent(pixels[i] & 0xffffff, colour -> nearest(palette, colour));
            small.getRaster().setSample(i % width, i / width, 0, place);
        }
        return written(small);
    }

    private static int nearest(List<Integer> palette, int colour) {
        int best = 0;
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < palette.size(); i++) {
            int distance = 0;
            for (int shift = 0; shift <= 16; shift += 8) {
                int difference = (palette.get(i) >> shift & 255) - (colour >> shift & 255);
                distance += difference * difference;
            }
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }

    private static byte[] written(BufferedImage picture) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ImageWriteParam as = writer.getDefaultWriteParam();
        as.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        as.setCompressionQuality(0);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (var out = ImageIO.createImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, null), as);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
