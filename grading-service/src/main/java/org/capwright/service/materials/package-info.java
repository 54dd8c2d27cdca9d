/** The call that tells what to buy for a run. What is asked and answered is part of a size run. */
package org.capwright.service.materials;
