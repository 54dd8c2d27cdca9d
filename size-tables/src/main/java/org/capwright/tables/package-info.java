/**
 * Published body tables: data files with their sources, and a small typed reader.
 *
 * <p><b>What is sure.</b> Two public surveys with arm dimensions, ANSUR 1988 (2208 women, 1774 men) and ANSUR II 2012
 * (1986 women, 4082 men), as class means over their per-person rows. The bust classes of EN 13402-3, the bust steps of
 * JIS L 4005, and the finished sleeve measurements of GOST 12.4.111-82.
 *
 * <p><b>What is less sure.</b> The torso rows of ASTM D5585-11e1, whose run-together digits were told apart by hand; the
 * women's size classes of two GOST standards, read where retailers quote them; the clause numbers of ISO 8559-1.
 * {@link org.capwright.tables.TableInfo#confidence()} and {@link org.capwright.tables.TableInfo#notes()} say so for
 * each table.
 *
 * <p><b>What is missing.</b> No printed standard with arm girths per size could be read. The women's tables by
 * EN 13402-3 bust class therefore carry the surveys' class means on the standard's classes, each value marked as
 * measured or interpolated; beyond the surveyed range they have gaps. The people surveyed are young, fit soldiers and
 * stand for no whole population.
 *
 * <p>No figure in a table rests on memory, and nothing is extrapolated. Titles and report numbers of the sources are from
 * memory where the page read did not print them.
 */
package org.capwright.tables;
