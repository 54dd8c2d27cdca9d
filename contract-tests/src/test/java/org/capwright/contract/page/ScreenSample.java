package org.capwright.contract.page;

import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.ArgumentsProvider;
import org.junit.jupiter.params.support.ParameterDeclarations;

/** A test on one of the screens, always the same one, told by its name; on every screen with {@code -Pthorough}. */
final class ScreenSample implements ArgumentsProvider {

    @Override
    public Stream<Arguments> provideArguments(ParameterDeclarations parameters, ExtensionContext context) {
        Screen[] all = Screen.values();
        return Boolean.getBoolean("capwright.thorough")
                ? Stream.of(all).map(Arguments::of)
                : Stream.of(Arguments.of(all[
                        Math.floorMod(context.getRequiredTestMethod().getName().hashCode(), all.length)]));
    }
}
