/** What the page that people use needs of the server: its files lie in {@code static}, its rules for the browser here. */
package org.capwright.service.page;
