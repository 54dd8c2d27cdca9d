/** What to buy for a run: cloths and trimming, as they are asked for and as they are answered. */
package org.capwright.service.materials;
