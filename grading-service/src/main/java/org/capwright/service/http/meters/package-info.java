/** What is counted for whoever runs the service. */
package org.capwright.service.http.meters;
