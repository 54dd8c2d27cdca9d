package org.capwright.service.orders;

/**
 * A file as it was drawn.
 *
 * @param format the end of its name
 * @param bytes what it holds
 */
record DrawnFile(String format, byte[] bytes) {}
