/** Grading: rules, size runs, nests, grade points and the spec table. Every size is drafted anew from its graded dimensions. */
package org.capwright.grade;
