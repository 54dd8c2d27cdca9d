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

    /**
     * Whether the keys may call it that stand in the open in a shop's page, from the origins that they are bound to.
     *
     * @return true for what a form needs to take an order, which shows nothing of others
     */
    boolean publishable() default false;
}
