/**
 * {@code POST /v1/made-to-measure}: one wearer's measurements, a style and its ease make a sleeve set of one size. Nothing about the wearer is stored or logged.
 */
package org.capwright.service.madetomeasure;
