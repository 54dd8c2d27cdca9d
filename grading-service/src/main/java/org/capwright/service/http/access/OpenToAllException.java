package org.capwright.service.http.access;

/** Thrown where the service would answer other machines without asking for a key. */
final class OpenToAllException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    OpenToAllException(String address) {
        super("server.address is " + address + ", which other machines can reach, and keys are off.");
    }
}
