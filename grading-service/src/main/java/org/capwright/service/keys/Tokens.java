package org.capwright.service.keys;

import java.time.Instant;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Scope;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.http.settings.WrongSettingException;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.security.oauth2.core.DelegatingOAuth2TokenValidator;
import org.springframework.security.oauth2.jwt.BadJwtException;
import org.springframework.security.oauth2.jwt.Jwt;
import org.springframework.security.oauth2.jwt.JwtClaimNames;
import org.springframework.security.oauth2.jwt.JwtClaimValidator;
import org.springframework.security.oauth2.jwt.JwtDecoder;
import org.springframework.security.oauth2.jwt.JwtException;
import org.springframework.security.oauth2.jwt.JwtIssuerValidator;
import org.springframework.security.oauth2.jwt.JwtTimestampValidator;
import org.springframework.security.oauth2.jwt.JwtTypeValidator;
import org.springframework.security.oauth2.jwt.NimbusJwtDecoder;
import org.springframework.stereotype.Component;

/**
 * Tokens that an authorisation server signs (RFC 9068, JWT), where one is set. A token names its tenant in a claim of the setting, and has the scopes of this service in {@code scope} or {@code scp}, with or without
 * {@code capwright:} before them.
 */
@Component
final class Tokens {

    private static final String PREFIX = "capwright:";

    private final String issuer;
    private final String jwkSet;
    private final String audience;
    private final String tenantClaim;
    private @Nullable JwtDecoder decoder;

    Tokens(
            @Value("${capwright.tokens.issuer}") String issuer,
            @Value("${capwright.tokens.jwk-set}") String jwkSet,
            @Value("${capwright.tokens.audience}") String audience,
            @Value("${capwright.tokens.tenant-claim}") String tenantClaim) {
        this.issuer = issuer.strip();
        this.jwkSet = jwkSet.strip();
        this.audience = audience.strip();
        this.tenantClaim = tenantClaim.strip();
        if (this.issuer.isEmpty() != this.jwkSet.isEmpty()) {
            throw new WrongSettingException(
                    "capwright.tokens.issuer and capwright.tokens.jwk-set must be set both, or none of them");
        }
        if (isOn() && (this.audience.isEmpty() || this.tenantClaim.isEmpty())) {
            throw new WrongSettingException(
                    "capwright.tokens.audience and capwright.tokens.tenant-claim must not be empty");
        }
    }

    boolean isOn() {
        return !jwkSet.isEmpty();
    }

    /** Made when the first token comes, so that the service starts without its authorisation server. */
    private synchronized JwtDecoder decoder() {
        JwtDecoder known = decoder;
        if (known == null) {
            NimbusJwtDecoder made =
                    NimbusJwtDecoder.withJwkSetUri(jwkSet).validateType(false).build();
            JwtTypeValidator type = new JwtTypeValidator(List.of("JWT", "at+jwt", "application/at+jwt"));
            type.setAllowEmpty(true);
            made.setJwtValidator(new DelegatingOAuth2TokenValidator<>(
                    type,
                    new JwtTimestampValidator(),
                    new JwtIssuerValidator(issuer),
                    new JwtClaimValidator<Collection<String>>(
                            JwtClaimNames.AUD, found -> found != null && found.contains(audience)),
                    new JwtClaimValidator<Instant>(JwtClaimNames.EXP, Objects::nonNull)));
            known = made;
            decoder = made;
        }
        return known;
    }

    /** Who sends a token; nobody if it is none, is not signed by the server, is for somebody else, or has expired. */
    Optional<Caller> caller(String token) {
        if (!isOn()) {
            return Optional.empty();
        }
        try {
            Jwt jwt = decoder().decode(token);
            return Optional.ofNullable(jwt.getClaimAsString(tenantClaim))
                    .filter(KeyRing::isTenant)
                    .map(tenant -> new Caller(tenant, name(jwt), scopes(jwt)));
        } catch (BadJwtException e) {
            return Optional.empty();
        } catch (JwtException e) {
            throw new ProblemException(
                    Problem.of(ProblemKind.UNAVAILABLE, "The keys of the authorisation server cannot be fetched now."));
        }
    }

    /** Who is named in histories: the program, not the person. */
    private static String name(Jwt jwt) {
        String name = Stream.of("client_id", "azp", JwtClaimNames.SUB)
                .flatMap(claim -> Optional.ofNullable(jwt.getClaimAsString(claim)).stream())
                .findFirst()
                .orElse("token");
        return name.substring(0, Math.min(name.length(), 100));
    }

    private static Set<Scope> scopes(Jwt jwt) {
        Object claim = Optional.<Object>ofNullable(jwt.getClaim("scope"))
                .or(() -> Optional.ofNullable(jwt.getClaim("scp")))
                .orElse("");
        Stream<String> words = claim instanceof Collection<?> list
                ? list.stream().map(String::valueOf)
                : Stream.of(claim.toString().split(" "));
        return words.map(word -> word.startsWith(PREFIX) ? word.substring(PREFIX.length()) : word)
                .flatMap(word -> Scope.find(word).stream())
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Scope.class)));
    }
}
