/** Traces (OpenTelemetry), where they are asked for. */
package org.capwright.service.http.traces;
