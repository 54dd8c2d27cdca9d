package org.capwright.service.orders;

/**
 * A file of an order.
 *
 * @param format the end of its name
 * @param sha256 its fingerprint
 * @param size its bytes
 */
record OrderFile(String format, String sha256, int size) {}
