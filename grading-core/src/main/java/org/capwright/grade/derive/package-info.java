/** Grade rules derived from the growth of bodies. */
package org.capwright.grade.derive;
