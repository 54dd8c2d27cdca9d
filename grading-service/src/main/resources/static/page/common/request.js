// The call behind an action, ready to be copied into a shell or a program.

import { h } from "./dom.js";
import { current, find, say } from "./words.js";

const ENDS = { "application/pdf": "pdf", "image/svg+xml": "svg", "image/vnd.dxf": "dxf", "application/vnd.hp-hpgl": "plt", "text/csv": "csv", "application/json": "json", "application/zip": "zip" };

const fileOf = (accept) => "sleeve." + (ENDS[accept] ?? "json");

const indented = (text, by) => text.split("\n").map((line, i) => (i === 0 ? line : by + line)).join("\n");

/** How a call is written: each takes its address, the media type asked for, and its body. */
const WRITTEN = {
  curl: (address, accept, body) => {
    const json = JSON.stringify(body, null, 2);
    return `curl --fail-with-body --silent --show-error --output ${fileOf(accept)} \\
  --header 'Content-Type: application/json' --header 'Accept: ${accept}' --header 'Accept-Language: ${current()}' \\
  --data-binary @- '${address}' <<'END_OF_REQUEST'
${json}
END_OF_REQUEST
`;
  },
  JavaScript: (address, accept, body) => `const response = await fetch(${JSON.stringify(address)}, {
  method: "POST",
  headers: { "Content-Type": "application/json", Accept: ${JSON.stringify(accept)}, "Accept-Language": "${current()}" },
  body: JSON.stringify(${indented(JSON.stringify(body, null, 2), "  ")}),
});
if (!response.ok) throw new Error((await response.json()).detail);
const file = await response.blob();
`,
  Java: (address, accept, body) => {
    // In a text block a backslash is written twice, and three quotation marks would end it.
    const json = JSON.stringify(body, null, 2).replaceAll("\\", "\\\\").replaceAll('"""', '\\"""');
    return `import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;

public class Sleeve {
    public static void main(String[] arguments) throws Exception {
        String body = """
                ${indented(json, "                ")}
                """;
        HttpRequest request = HttpRequest.newBuilder(URI.create(${JSON.stringify(address)}))
                .header("Content-Type", "application/json")
                .header("Accept", ${JSON.stringify(accept)})
                .header("Accept-Language", "${current()}")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build();
        HttpResponse<Path> response =
                HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofFile(Path.of(${JSON.stringify(fileOf(accept))})));
        if (response.statusCode() != 200) {
            throw new IllegalStateException("answered " + response.statusCode());
        }
    }
}
`;
  },
};

export const written = (language, address, accept, body) => WRITTEN[language](address, accept, body);

/** Something to open that shows a call; call answers with {path, accept, body} as they are when it is opened. Name tells several of them apart. */
export function requestShown(name, call) {
  const code = h("pre", { class: "request-code", tabindex: "0", role: "group" });
  const says = h("span", { class: "quiet-words", role: "status" });
  const language = h("select", { "aria-label": say("request.language"), onchange: () => show() }, Object.keys(WRITTEN).map((each) => h("option", { value: each }, each)));
  const show = () => {
    const { path, accept, body } = call();
    says.textContent = "";
    code.textContent = written(language.value, new URL(path, document.baseURI).href, accept, body);
    code.setAttribute("aria-label", `${find("request")[language.value]}${say("colon")}${name}`);
  };
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(code.textContent);
      says.textContent = say("request.copied");
    } catch {
      says.textContent = say("request.notCopied");
    }
  };
  const details = h(
    "details",
    { class: "request" },
    h("summary", null, say("request.show"), h("span", { class: "unseen" }, say("colon") + name)),
    h("div", { class: "request-tools" }, language, h("button", { type: "button", onclick: copy }, say("request.copy")), says),
    code,
  );
  details.addEventListener("toggle", () => details.open && show());
  return details;
}
