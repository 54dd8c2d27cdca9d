package org.capwright.service.webhooks;

import java.time.Instant;
import java.util.List;

/**
 * An address that is told of events.
 *
 * @param id its id
 * @param url where
 * @param events of what
 * @param secrets by which what is sent is signed, the newest first
 * @param madeAt when it was made
 */
record Webhook(String id, String url, List<String> events, List<String> secrets, Instant madeAt) {}
