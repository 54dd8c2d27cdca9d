/** How much the service does at a time: what computes takes its turn, and is sent away in order where too much waits. */
package org.capwright.service.http.load;
