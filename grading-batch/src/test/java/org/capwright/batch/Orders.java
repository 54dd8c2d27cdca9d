package org.capwright.batch;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.TreeMap;

/** Orders of a costume workshop, invented for the demo. */
final class Orders {

    /** A figure that stands nowhere else, to be looked for where it must not be. */
    static final String SECRET = "31.4159";

    /** A wrist that hardly anybody has with the rest. */
    static final String WRIST = "20.3141";

    private Orders() {}

    static Path style() {
        return Path.of("").toAbsolutePath().getParent().resolve("examples/choir-gown.json");
    }

    static TreeMap<String, byte[]> styles() throws IOException {
        TreeMap<String, byte[]> styles = new TreeMap<>();
        styles.put("choir-gown", Files.readAllBytes(style()));
        return styles;
    }

    /** A wearer's order; arms of wearers differ by millimetres. */
    static String wearer(int number) {
        return String.format(
                Locale.ROOT,
                "{\"style\":\"choir-gown\",\"reference\":\"order %d\",\"wearer\":{\"bustGirth\":96,\"stature\":168,"
                        + "\"upperArmGirth\":%.1f,\"armLength\":59,\"elbowGirth\":26},\"ease\":{\"bicep\":7,\"elbow\":"
                        + "\"15%%\",\"wrist\":6,\"length\":1,\"armhole\":\"14%%\",\"capEase\":\"4%%\"}}",
                number,
                31 + number % 10 * 0.1);
    }

    /** The same with a measurement that hardly anybody has. */
    static String questioned(int number) {
        return wearer(number).replaceFirst("\"stature\":168", "\"stature\":168,\"wristGirth\":" + WRIST);
    }

    static String size(int number, String size) {
        return "{\"style\":\"choir-gown\",\"reference\":\"order " + number + "\",\"size\":\"" + size + "\"}";
    }

    static byte[] bytes(String line) {
        return line.getBytes(StandardCharsets.UTF_8);
    }
}
