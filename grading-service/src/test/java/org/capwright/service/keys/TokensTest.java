package org.capwright.service.keys;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import java.math.BigInteger;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.Signature;
import java.security.interfaces.RSAPublicKey;
import java.time.Instant;
import java.util.Base64;
import org.capwright.service.KeptService;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.store.Databases;
import org.junit.jupiter.api.Test;

/** Tokens of an authorisation server, signed here by the platform alone (RFC 7515, RFC 7517, RS256 of RFC 7518), and a limit of calls. */
class TokensTest {

    private static final String ISSUER = "https://login.choir.example";

    private static String text(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    private static String text(String json) {
        return text(json.getBytes(StandardCharsets.UTF_8));
    }

    private static byte[] magnitude(BigInteger number) {
        byte[] bytes = number.toByteArray();
        return bytes[0] == 0 ? java.util.Arrays.copyOfRange(bytes, 1, bytes.length) : bytes;
    }

    private static KeyPair pair() throws GeneralSecurityException {
        KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA");
        generator.initialize(2048);
        return generator.generateKeyPair();
    }

    private static String token(KeyPair pair, String claims) throws GeneralSecurityException {
        String signed = text("{\"alg\":\"RS256\",\"kid\":\"one\",\"typ\":\"at+jwt\"}") + "." + text(claims);
        Signature signature = Signature.getInstance("SHA256withRSA");
        signature.initSign(pair.getPrivate());
        signature.update(signed.getBytes(StandardCharsets.US_ASCII));
        return signed + "." + text(signature.sign());
    }

    private static String claims(String issuer, String audience, long expires, String rest) {
        return "{\"iss\":\"" + issuer + "\",\"aud\":[\"" + audience
                + "\"],\"sub\":\"someone\",\"client_id\":\"shop server\"," + "\"exp\":"
                + (Instant.now().getEpochSecond() + expires) + rest + "}";
    }

    private static HttpServer keys(KeyPair pair) throws Exception {
        RSAPublicKey key = (RSAPublicKey) pair.getPublic();
        byte[] set = ("{\"keys\":[{\"kty\":\"RSA\",\"kid\":\"one\",\"use\":\"sig\",\"alg\":\"RS256\",\"n\":\""
                        + text(magnitude(key.getModulus())) + "\",\"e\":\""
                        + text(magnitude(key.getPublicExponent())) + "\"}]}")
                .getBytes(StandardCharsets.UTF_8);
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", exchange -> {
            exchange.getResponseHeaders().set("Content-Type", "application/json");
            exchange.sendResponseHeaders(200, set.length);
            exchange.getResponseBody().write(set);
            exchange.close();
        });
        server.start();
        return server;
    }

    private static KeptService.Answer styles(
            KeptService service, String method, String path, String body, String token) {
        return service.send(method, path, body, "Authorization", "Bearer " + token);
    }

    @Test
    void tokensOfTheServerAreLetInAndCalledAsOftenAsTheLimitSays() throws Exception {
        KeyPair pair = pair();
        HttpServer server = keys(pair);
        KeptService service = KeptService.started(
                Databases.EMBEDDED.empty(),
                "--capwright.tokens.issuer=" + ISSUER,
                "--capwright.tokens.jwk-set=http://127.0.0.1:"
                        + server.getAddress().getPort() + "/keys",
                "--capwright.rate-limit=5/PT1H");
        try {
            String reader =
                    token(pair, claims(ISSUER, "capwright", 60, ",\"tenant\":\"choir\",\"scope\":\"openid read\""));
            KeptService.Answer first = styles(service, "GET", "/v1/styles", "", reader);
            assertEquals(200, first.status(), first.text());
            assertEquals("\"calls\";q=5;w=3600", first.header("RateLimit-Policy"));
            assertTrue(first.header("RateLimit").matches("\"calls\";r=4;t=\\d+"), first.header("RateLimit"));
            assertEquals(
                    403, styles(service, "PUT", "/v1/styles/gown", "{}", reader).status(), "no scope style");
            String writer = token(
                    pair,
                    claims(
                            ISSUER,
                            "capwright",
                            60,
                            ",\"tenant\":\"choir\",\"scp\":[\"capwright:style\",\"capwright:read\"]"));
            assertEquals(
                    422, styles(service, "PUT", "/v1/styles/gown", "{}", writer).status());
            String[] wrong = {
                token(pair(), claims(ISSUER, "capwright", 60, ",\"tenant\":\"choir\",\"scope\":\"read\"")),
                token(pair, claims(ISSUER, "others", 60, ",\"tenant\":\"choir\",\"scope\":\"read\"")),
                token(
                        pair,
                        claims("https://evil.example", "capwright", 60, ",\"tenant\":\"choir\",\"scope\":\"read\"")),
                token(pair, claims(ISSUER, "capwright", -120, ",\"tenant\":\"choir\",\"scope\":\"read\"")),
                token(pair, claims(ISSUER, "capwright", 60, ",\"scope\":\"read\"")),
                token(pair, claims(ISSUER, "capwright", 60, ",\"tenant\":\"\",\"scope\":\"read\"")),
                text("{\"alg\":\"none\"}") + "."
                        + text(claims(ISSUER, "capwright", 60, ",\"tenant\":\"choir\",\"scope\":\"read\"")) + "."
            };
            for (String token : wrong) {
                assertEquals(
                        401, styles(service, "GET", "/v1/styles", "", token).status(), token);
            }
            assertEquals(401, styles(service, "GET", "/v1/styles", "", "").status());
            for (int i = 0; i < 3; i++) {
                assertEquals(
                        200, styles(service, "GET", "/v1/styles", "", reader).status());
            }
            KeptService.Answer limited = styles(service, "GET", "/v1/styles", "", reader);
            assertEquals(429, limited.status(), limited.text());
            assertTrue(limited.header("RateLimit").startsWith("\"calls\";r=0;"), limited.header("RateLimit"));
            int later = Integer.parseInt(limited.header("Retry-After"));
            assertTrue(later > 0 && later <= 3600 / 5, "one call is there again after a fifth of the window: " + later);
            assertEquals(
                    "application/problem+json", limited.header("Content-Type").split(";")[0]);
            assertEquals(200, styles(service, "GET", "/v1/styles", "", writer).status(), "another's are counted apart");
        } finally {
            service.stop();
            server.stop(0);
        }
    }

    @Test
    void halfASettingIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Tokens(ISSUER, "", "capwright", "tenant"));
        assertThrows(IllegalArgumentException.class, () -> new Tokens(ISSUER, "https://x.example", "", "tenant"));
        Tokens unreachable = new Tokens(ISSUER, "http://127.0.0.1:1/keys", "capwright", "tenant");
        String token = text("{\"alg\":\"RS256\"}") + "." + text(claims(ISSUER, "capwright", 60, "")) + "." + text("x");
        assertEquals(
                503,
                assertThrows(ProblemException.class, () -> unreachable.caller(token))
                        .problem()
                        .status());
    }
}
