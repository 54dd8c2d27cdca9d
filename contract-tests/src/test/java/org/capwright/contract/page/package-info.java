/** The page as a person uses it, in a real browser. */
package org.capwright.contract.page;
