/** What is to go is told to whoever uses it, and in the description. */
package org.capwright.service.http.departures;
