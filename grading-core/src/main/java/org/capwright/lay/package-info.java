/** Laying pieces on cloth: how long a lay is, what to buy, and a picture of it. */
package org.capwright.lay;
