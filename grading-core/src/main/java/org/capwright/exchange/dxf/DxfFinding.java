package org.capwright.exchange.dxf;

/**
 * One thing that is wrong with a DXF file.
 *
 * @param line number of the line, from 1
 * @param fault what is wrong
 * @param detail the value or name concerned, in words
 */
public record DxfFinding(int line, DxfFault fault, String detail) {}
