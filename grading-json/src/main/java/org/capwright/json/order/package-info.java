/** A style as it is kept and an order on it as JSON: a size of the style, or a sleeve for a wearer. */
package org.capwright.json.order;
