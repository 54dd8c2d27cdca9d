/** A style and its size run as JSON: what it may say, how it is read and how it is written. */
package org.capwright.json.style;
