package org.capwright.report;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;

/** A picture of the sleeve as it is worn, simulated by whoever sends it. Immutable. */
public final class WornPicture {

    /** The greatest side, dots. */
    public static final int MOST_DOTS = 1600;

    private final byte[] png;
    private final BufferedImage image;

    private WornPicture(byte[] png, BufferedImage image) {
        this.png = png;
        this.image = image;
    }

    /**
     * Reads a picture.
     *
     * @param png a PNG file (ISO/IEC 15948), up to {@link #MOST_DOTS} dots wide and high
     * @return the picture
     * @throws InvalidMeasuresException if it is none, or larger
     */
    public static WornPicture of(byte[] png) {
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(png))) {
            Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName("png");
            ImageReader reader = readers.next();
            try {
                reader.setInput(in);
                // Asked before anything is unpacked: a small file may promise a huge picture.
                if (reader.getWidth(0) > MOST_DOTS || reader.getHeight(0) > MOST_DOTS) {
                    throw refused();
                }
                return new WornPicture(png.clone(), reader.read(0));
            } finally {
                reader.dispose();
            }
        } catch (IOException | RuntimeException e) {
            if (e instanceof InvalidMeasuresException known) {
                throw known;
            }
            throw refused();
        }
    }

    private static InvalidMeasuresException refused() {
        return new InvalidMeasuresException(
                Violation.of(Option.WORN_PICTURE, "must be a PNG picture of up to 1600 dots each way, in Base64"));
    }

    /**
     * The file as it came.
     *
     * @return a copy of its bytes
     */
    public byte[] png() {
        return png.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WornPicture picture && Arrays.equals(png, picture.png);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(png);
    }

    BufferedImage image() {
        return image;
    }

    /** Width of its place for a height, mm. */
    double width(double height) {
        return height * image.getWidth() / image.getHeight();
    }
}
