/** What is wrong with a setting, said at the start instead of a stack trace. */
package org.capwright.service.http.settings;
