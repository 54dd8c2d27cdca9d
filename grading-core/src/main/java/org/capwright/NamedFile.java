package org.capwright;

/**
 * A file that goes into an archive beside those of the pieces.
 *
 * @param ending the end of its name, without the dot
 * @param meaning what it holds, one or two sentences
 * @param content its bytes; not to be changed any more
 */
public record NamedFile(String ending, String meaning, byte[] content) {}
