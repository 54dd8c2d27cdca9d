package org.capwright.batch;

import java.util.List;

/** What became of one line. */
public sealed interface Outcome {

    /**
     * The shop's own name for the order.
     *
     * @return as the line has it; empty if it has none, or cannot be read
     */
    String reference();

    /**
     * The order is cut.
     *
     * @param reference the shop's own name for it
     * @param style id of the style
     * @param files one in each format that was asked for
     */
    record Cut(String reference, String style, List<CutFile> files) implements Outcome {}

    /**
     * The order is not cut.
     *
     * @param reference the shop's own name for it
     * @param state {@code refused}, or {@code questioned} where a measurement must be taken again or confirmed
     * @param refusals what is wrong, at least one
     */
    record NotCut(String reference, String state, List<Refusal> refusals) implements Outcome {}
}
