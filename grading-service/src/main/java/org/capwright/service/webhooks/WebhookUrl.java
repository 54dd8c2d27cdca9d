package org.capwright.service.webhooks;

import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.util.Optional;

/**
 * Which addresses a webhook may have.
 *
 * @param anywhere whether private networks and addresses without TLS are allowed
 */
record WebhookUrl(boolean anywhere) {

    private static final String RULE =
            "must be an address such as https://shop.example/capwright, without user or" + " fragment";

    /** Why an address is refused. A name is looked up again whenever something is sent. */
    Optional<String> refused(String text) {
        URI uri;
        try {
            uri = new URI(text);
        } catch (URISyntaxException e) {
            return Optional.of(RULE);
        }
        boolean encrypted = "https".equalsIgnoreCase(uri.getScheme());
        if (uri.getHost() == null
                || uri.getUserInfo() != null
                || uri.getRawFragment() != null
                || !encrypted && !(anywhere && "http".equalsIgnoreCase(uri.getScheme()))) {
            return Optional.of(RULE);
        }
        boolean hidden = !anywhere && isAddress(uri.getHost()) && !isPublic(uri.getHost());
        return hidden
                ? Optional.of("must not lead into a private network; the setting capwright.webhooks-to-private-networks"
                        + " allows it")
                : Optional.empty();
    }

    /** Names are not looked up here: digits and dots, or brackets, are addresses already. */
    private static boolean isAddress(String host) {
        return host.startsWith("[") || host.matches("[0-9.]+") || host.equalsIgnoreCase("localhost");
    }

    private static boolean isPublic(String host) {
        try {
            return PublicAddresses.isPublic(InetAddress.getByName(host));
        } catch (UnknownHostException e) {
            return false;
        }
    }
}
