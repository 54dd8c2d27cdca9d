/** {@code /v1/orders}: orders on a kept style, by the measurements of a wearer or by a size, with the very files that were drawn when they were taken. */
package org.capwright.service.orders;
