package org.capwright.service.page;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Modules of JavaScript put together into one script, for a page that is to fetch a single file and whatever it needs with it. Each module becomes a function that
 * answers what it exports. It knows the ways of importing and exporting that the modules here use, and refuses others.
 */
final class OneScript {

    private static final Pattern DEFAULT = Pattern.compile("import (\\w+) from \"([^\"]+)\";");
    private static final Pattern NAMED = Pattern.compile("import \\{ ([^}]+) } from \"([^\"]+)\";");
    private static final Pattern EXPORT = Pattern.compile("export (?:const|class|function|async function) (\\w+)\\b.*");
    private static final String EXPORT_WORD = "export ";
    private static final String EXPORT_DEFAULT = "export default ";

    /** No module has a name of its own like this. */
    private static final String OTHERWISE = "defaultExport";

    private final Class<?> owner;
    private final Map<URI, String> places = new LinkedHashMap<>();
    private final StringBuilder script = new StringBuilder();

    private OneScript(Class<?> owner) {
        this.owner = owner;
    }

    /**
     * Puts a module and all that it imports together.
     *
     * @param owner a class beside whose resources the modules are
     * @param module the place of the module, for example {@code /static/form/element.js}
     * @return a script that is no module
     */
    static String of(Class<?> owner, String module) {
        OneScript one = new OneScript(owner);
        one.add(URI.create(module));
        return "(() => {\n\"use strict\";\n" + one.script + "})();\n";
    }

    private String add(URI module) {
        String known = places.get(module);
        if (known != null) {
            return known;
        }
        List<String> exports = new ArrayList<>();
        StringBuilder body = new StringBuilder();
        for (String line : source(module).lines().toList()) {
            body.append(line.startsWith("import ") ? imported(module, line) : exported(line, exports))
                    .append('\n');
        }
        String name = "module" + places.size();
        places.put(module, name);
        script.append("const ")
                .append(name)
                .append(" = (() => {\n")
                .append(body)
                .append("return { ")
                .append(String.join(", ", exports))
                .append(" };\n})();\n");
        return name;
    }

    private String imported(URI module, String line) {
        Matcher whole = DEFAULT.matcher(line);
        if (whole.matches()) {
            return "const " + whole.group(1) + " = " + add(module.resolve(whole.group(2))) + ".default;";
        }
        Matcher named = NAMED.matcher(line);
        if (named.matches()) {
            return "const { " + named.group(1).replace(" as ", ": ") + " } = " + add(module.resolve(named.group(2)))
                    + ";";
        }
        throw new IllegalStateException(module + " imports in a way that is not known here: " + line);
    }

    private static String exported(String line, List<String> exports) {
        if (line.startsWith(EXPORT_DEFAULT)) {
            exports.add("default: " + OTHERWISE);
            return "const " + OTHERWISE + " = " + line.substring(EXPORT_DEFAULT.length());
        }
        if (!line.startsWith(EXPORT_WORD)) {
            return line;
        }
        Matcher export = EXPORT.matcher(line);
        if (!export.matches()) {
            throw new IllegalStateException("an export of a kind that is not known here: " + line);
        }
        exports.add(export.group(1));
        return line.substring(EXPORT_WORD.length());
    }

    private String source(URI module) {
        try (InputStream in = owner.getResourceAsStream(module.getPath())) {
            if (in == null) {
                throw new IllegalStateException("no module " + module);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
