package org.capwright.service.webhooks;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/** A secret that sender and receiver of a webhook share, and the signature made by it (Standard Webhooks 1.0.0, "Signature scheme"). */
final class WebhookSecret {

    private static final String PREFIX = "whsec_";
    private static final String METHOD = "HmacSHA256";
    private static final int BYTES = 32;
    private static final SecureRandom RANDOM = new SecureRandom();

    private WebhookSecret() {}

    static String made() {
        byte[] secret = new byte[BYTES];
        RANDOM.nextBytes(secret);
        return PREFIX + Base64.getEncoder().encodeToString(secret);
    }

    static String signature(String secret, String id, long timestamp, String payload) {
        try {
            Mac mac = Mac.getInstance(METHOD);
            mac.init(new SecretKeySpec(Base64.getDecoder().decode(secret.substring(PREFIX.length())), METHOD));
            byte[] signed = mac.doFinal((id + "." + timestamp + "." + payload).getBytes(StandardCharsets.UTF_8));
            return "v1," + Base64.getEncoder().encodeToString(signed);
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform has HMAC with SHA-256", e);
        }
    }
}
