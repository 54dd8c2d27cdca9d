/** Published body tables: data files with their sources, and a small typed reader. */
package org.capwright.tables;
