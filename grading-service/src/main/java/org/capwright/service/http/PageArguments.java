package org.capwright.service.http;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.core.MethodParameter;
import org.springframework.stereotype.Component;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** Reads the part of a list that a call asks for: whoever lists takes a {@link PageAsked}. */
@Component
final class PageArguments implements HandlerMethodArgumentResolver, WebMvcConfigurer {

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(this);
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == PageAsked.class;
    }

    @Override
    public Object resolveArgument(
            MethodParameter parameter,
            @Nullable ModelAndViewContainer container,
            NativeWebRequest request,
            @Nullable WebDataBinderFactory binders) {
        return PageAsked.of(given(request, PageAsked.LIMIT, PageAsked.USUAL), given(request, PageAsked.CURSOR, ""));
    }

    private static String given(NativeWebRequest request, String name, String usual) {
        return Optional.ofNullable(request.getParameter(name))
                .filter(text -> !text.isEmpty())
                .orElse(usual);
    }
}
