package org.capwright.draft;

/**
 * What is settled about an under-sleeve apart from its dimensions.
 *
 * @param shaping how it is shaped at the elbow
 */
public record UnderSleeveStyle(ElbowShaping shaping) {}
