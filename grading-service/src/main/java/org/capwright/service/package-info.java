/** The HTTP service: its start and its settings. */
package org.capwright.service;
