package org.capwright.service.http.settings;

import org.jspecify.annotations.Nullable;
import org.springframework.beans.TypeMismatchException;
import org.springframework.beans.factory.InjectionPoint;
import org.springframework.beans.factory.UnsatisfiedDependencyException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.util.unit.DataSize;

/** Says which setting Spring could not make a number, a size or a yes or no of. */
final class UnreadSettingAnalysis extends AbstractFailureAnalyzer<TypeMismatchException> {

    @Override
    protected @Nullable FailureAnalysis analyze(Throwable failure, TypeMismatchException cause) {
        for (Throwable at = failure; at != null; at = at.getCause()) {
            InjectionPoint point =
                    at instanceof UnsatisfiedDependencyException unsatisfied ? unsatisfied.getInjectionPoint() : null;
            Value value = point == null ? null : point.getAnnotation(Value.class);
            if (value != null) {
                return new FailureAnalysis(
                        value.value().replaceAll("[${}]", "") + " must be " + takes(cause.getRequiredType()) + ", not "
                                + cause.getValue() + ".",
                        WrongSettingAnalysis.ACTION,
                        cause);
            }
        }
        return null;
    }

    private static String takes(@Nullable Class<?> type) {
        return type == boolean.class
                ? "true or false"
                : type == DataSize.class ? "a size such as 64MB" : "of another kind";
    }
}
