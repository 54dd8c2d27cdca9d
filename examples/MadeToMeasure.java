import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The call of a made-to-order shop: one wearer's measurements in, one sleeve set out, as a PDF to print.
 *
 * <p>Run it with {@code java MadeToMeasure.java http://localhost:8080 made-to-measure.json sleeve.pdf}.
 */
final class MadeToMeasure {

    private MadeToMeasure() {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(arguments[0] + "/v1/made-to-measure"))
                .header("Content-Type", "application/json")
                .header("Accept", "application/pdf")
                .POST(HttpRequest.BodyPublishers.ofFile(Path.of(arguments[1])))
                .build();
        HttpResponse<byte[]> response = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofByteArray());
        if (response.statusCode() != 200) {
            // A problem document (RFC 9457): it names every field with what would work, or asks to measure again.
            System.out.println(new String(response.body(), java.nio.charset.StandardCharsets.UTF_8));
            System.exit(1);
        }
        Files.write(Path.of(arguments[2]), response.body());
        System.out.println("Wrote " + arguments[2] + ".");
        response.headers()
                .firstValue("Capwright-Estimated")
                .ifPresent(names -> System.out.println("Measure before cutting: " + names + "."));
    }
}
