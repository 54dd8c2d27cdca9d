package org.capwright.service.http.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.capwright.service.KeptService;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.core.NestedExceptionUtils;

/** Who can reach the service without a key. */
class ReachTest {

    @ParameterizedTest
    @ValueSource(strings = {"--server.address=0.0.0.0", "--server.address=::"})
    void otherMachinesAreNotAnsweredWithoutKeys(String address) {
        Exception refused = assertThrows(Exception.class, () -> KeptService.started("off", address));
        assertEquals(
                OpenToAllException.class,
                Optional.ofNullable(NestedExceptionUtils.getRootCause(refused))
                        .orElse(refused)
                        .getClass());
        FailureAnalysis said = new OpenToAllAnalysis().analyze(refused);
        assertTrue(said.getAction().contains("capwright.operator-key"), said.getAction());
    }

    @Test
    void withKeysTheyAre() {
        KeptService service =
                KeptService.started("off", "--server.address=0.0.0.0", "--capwright.operator-key=" + "k".repeat(32));
        try {
            assertEquals(401, service.get("/v1/size-tables").status());
            assertEquals(200, service.get("/actuator/health").status());
        } finally {
            service.stop();
        }
    }
}
