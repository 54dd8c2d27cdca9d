/** Work that is done apart from any request, by whichever copy of the service has a hand free, and taken up again after a crash. */
package org.capwright.service.jobs;
