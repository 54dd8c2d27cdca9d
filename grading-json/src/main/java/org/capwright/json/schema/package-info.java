/** What a request may hold, declared once: the reader checks requests by it and the API description is made from it. */
package org.capwright.json.schema;
