/** Files that leave the engine. Every file states style, revision, unit, size, grain and cut instruction; the same input gives the same bytes. */
package org.capwright.exchange;
