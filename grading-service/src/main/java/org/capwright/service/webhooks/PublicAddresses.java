package org.capwright.service.webhooks;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.hc.client5.http.DnsResolver;
import org.apache.hc.client5.http.SystemDefaultDnsResolver;

/**
 * Resolves names to addresses that everybody can reach, and refuses the others: the special-purpose addresses of RFC 6890 and their registries at IANA. The connection goes to the very address that was looked at, so a name
 * that answers otherwise the next time leads nowhere.
 */
final class PublicAddresses implements DnsResolver {

    private static final List<Block> SPECIAL = Stream.of(
                    "0.0.0.0/8",
                    "10.0.0.0/8",
                    "100.64.0.0/10",
                    "127.0.0.0/8",
                    "169.254.0.0/16",
                    "172.16.0.0/12",
                    "192.0.0.0/24",
                    "192.0.2.0/24",
                    "192.88.99.0/24",
                    "192.168.0.0/16",
                    "198.18.0.0/15",
                    "198.51.100.0/24",
                    "203.0.113.0/24",
                    "224.0.0.0/3",
                    "::/96",
                    "64:ff9b::/96",
                    "64:ff9b:1::/48",
                    "100::/64",
                    "2001::/23",
                    "2001:db8::/32",
                    "2002::/16",
                    "3fff::/20",
                    "5f00::/16",
                    "fc00::/7",
                    "fe80::/9",
                    "ff00::/8")
            .map(Block::of)
            .toList();

    /** Addresses that begin with the same bits. */
    private record Block(byte[] start, int bits) {

        static Block of(String text) {
            String[] parts = text.split("/");
            return new Block(literal(parts[0]).getAddress(), Integer.parseInt(parts[1]));
        }

        boolean has(byte[] address) {
            if (address.length != start.length) {
                return false;
            }
            for (int bit = 0; bit < bits; bit++) {
                int mask = 0x80 >> bit % Byte.SIZE;
                if ((address[bit / Byte.SIZE] & mask) != (start[bit / Byte.SIZE] & mask)) {
                    return false;
                }
            }
            return true;
        }
    }

    private static InetAddress literal(String address) {
        try {
            return InetAddress.getByName(address);
        } catch (UnknownHostException e) {
            throw new IllegalArgumentException(address, e);
        }
    }

    /** Whether everybody can reach an address. */
    static boolean isPublic(InetAddress address) {
        boolean scoped = address instanceof Inet6Address six && six.getScopeId() != 0;
        return !scoped && SPECIAL.stream().noneMatch(block -> block.has(address.getAddress()));
    }

    @Override
    public InetAddress[] resolve(String host) throws UnknownHostException {
        InetAddress[] found = SystemDefaultDnsResolver.INSTANCE.resolve(host);
        if (found == null || found.length == 0 || !Stream.of(found).allMatch(PublicAddresses::isPublic)) {
            throw new UnknownHostException("leads into a private network");
        }
        return found;
    }

    @Override
    public String resolveCanonicalHostname(String host) {
        return host;
    }
}
