/** The API description: what the annotations cannot say, taken from where it is declared. */
package org.capwright.service.http.description;
