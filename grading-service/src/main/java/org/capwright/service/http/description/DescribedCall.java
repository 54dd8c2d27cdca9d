package org.capwright.service.http.description;

/** What a call says of itself in the API description, beyond what its method shows. */
public interface DescribedCall {

    /**
     * Completes the operations of the call.
     *
     * @param api the description
     */
    void describe(DescribedApi api);
}
