package org.capwright.service.http.access;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** The scope that a call needs. A call that keeps nothing and shows nothing of a tenant says none: any key with {@link Scope#READ} may call it. */
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface Needs {

    /**
     * Which.
     *
     * @return the scope
     */
    Scope value();

    /**
     * Whether the operator of the installation may call it as well, who belongs to no tenant.
     *
     * @return true for the calls about keys
     */
    boolean operator() default false;
}
