package org.capwright.service.http.description;

import io.swagger.v3.oas.models.PathItem;
import java.util.List;
import java.util.function.Function;
import org.capwright.service.http.schema.RequestSchema;

/** What a call says of itself in the API description, beyond what its method shows. */
public interface DescribedCall {

    /**
     * Bodies that are read.
     *
     * @return one schema for each
     */
    List<RequestSchema> requests();

    /**
     * Bodies that are answered as JSON.
     *
     * @return records
     */
    List<Class<?>> answers();

    /**
     * Completes the operations of the call.
     *
     * @param paths what there is at an address of the service
     */
    void describe(Function<String, PathItem> paths);
}
