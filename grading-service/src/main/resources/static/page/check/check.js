// Somebody else's grade: a spec table or outlines dropped here are held against bodies and practice. The files go to this service and nowhere else.

import { h } from "../common/dom.js";
import { Report } from "./report.js";
import { once, Refused, send, sizeRun } from "../common/service.js";
import { UNITS } from "../common/units.js";
import { find, say } from "../common/words.js";

const CSV = "text/csv";
const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const DXF = "image/vnd.dxf";

const fresh = (style) => ({ files: [], fileUnits: "", baseSize: "", mapping: {}, table: style.sizeTable ?? "women-en-13402-3-bust" });

/** A file by its name, or else by its first lines. */
async function typeOf(file) {
  if (/\.(csv|tsv|txt)$/i.test(file.name)) return CSV;
  if (/\.xls[xm]$/i.test(file.name)) return XLSX;
  if (/\.dxf$/i.test(file.name)) return DXF;
  return /^\s*(0\s+SECTION|999)/.test(await file.slice(0, 200).text()) ? DXF : CSV;
}

export class Check {
  #flight = new AbortController();

  constructor(store, state) {
    this.store = store;
    this.state = state ?? fresh(store.style);
    this.report = new Report(
      (accept, signal) => this.request(accept, signal),
      (name, meaning) => this.#take("mapping", { ...this.state.mapping, [name]: meaning }),
    );
    this.element = h("div", { class: "check" }, this.#form(), this.report.element);
    this.units = store.style.units;
    if (this.state.files.length > 0) this.#ask();
  }

  #form() {
    this.opener = h("input", {
      type: "file",
      id: "check-file",
      class: "unseen",
      multiple: true,
      accept: `.csv,.tsv,.txt,.xlsx,.xlsm,.dxf,text/csv,image/vnd.dxf,${XLSX}`,
      onchange: () => {
        const files = [...this.opener.files];
        this.opener.value = "";
        this.#put(files);
      },
    });
    this.drop = h(
      "label",
      { class: "drop", for: "check-file" },
      h("strong", null, say("check.drop")),
      h("span", null, say("check.dropLead")),
    );
    for (const kind of ["dragover", "dragleave", "drop"]) {
      this.drop.addEventListener(kind, (event) => {
        event.preventDefault();
        this.drop.classList.toggle("over", kind === "dragover");
        if (kind === "drop") this.#put([...event.dataTransfer.files]);
      });
    }
    this.list = h("ul", { class: "check-files", "aria-label": say("check.files") });
    const choice = (id, key, options) =>
      h("select", { id, onchange: (event) => this.#take(key, event.target.value) }, options.map(([value, words]) => h("option", { value, selected: value === this.state[key] }, words)));
    this.fileUnits = choice("check-units", "fileUnits", [["", say("check.asStated")], ...UNITS.map((unit) => [unit, say("unit." + unit)])]);
    this.table = choice("check-table", "table", [["", say("noTable")]]);
    this.base = h("input", { id: "check-base", type: "text", autocomplete: "off", maxlength: 20, value: this.state.baseSize, onchange: () => this.#take("baseSize", this.base.value.trim()) });
    const tool = (input, words, about) =>
      h(
        "div",
        { class: "field" },
        h("div", { class: "head" }, h("label", { for: input.id }, words)),
        input,
        h("p", { class: "how", id: input.id + "-about" }, about),
      );
    for (const input of [this.fileUnits, this.table, this.base]) input.setAttribute("aria-describedby", input.id + "-about");
    once("v1/size-tables")
      .then(({ sizeTables }) => {
        const bodies = sizeTables.filter((info) => info.kind === "body" && info.key);
        this.table.replaceChildren(h("option", { value: "" }, say("noTable")), ...bodies.map((info) => h("option", { value: info.id }, info.title)));
        this.table.value = this.state.table;
      })
      .catch(() => undefined);
    this.#showFiles();
    return h(
      "section",
      { class: "check-form", "aria-label": find("tasks").check },
      h("h2", null, say("check.title")),
      h("p", { class: "quiet-words" }, say("check.lead")),
      this.opener,
      this.drop,
      this.list,
      h("div", { class: "buttons" }, h("button", { type: "button", id: "check-own", onclick: () => this.#own() }, say("check.own"))),
      h(
        "div",
        { class: "fields" },
        tool(this.fileUnits, say("check.units"), say("check.unitsLead")),
        tool(this.base, say("check.base"), say("check.baseLead")),
        tool(this.table, say("check.table"), say("check.tableLead")),
      ),
    );
  }

  #showFiles() {
    this.list.replaceChildren(
      ...this.state.files.map((file, i) =>
        h(
          "li",
          null,
          h("span", null, file.name),
          h("button", { type: "button", class: "quiet square", "aria-label": say("check.remove", { name: file.name }), onclick: () => this.#put(this.state.files.filter((each, at) => at !== i)) }, "×"),
        ),
      ),
    );
  }

  #put(files) {
    this.state.files = files;
    this.state.mapping = {};
    this.#showFiles();
    this.#ask();
  }

  #take(key, value) {
    this.state[key] = value;
    this.#ask();
  }

  /** The spec table of the style on the bench: to see what a report looks like, and what a file may look like. */
  async #own() {
    const { materials, ...style } = this.store.style;
    try {
      const table = await (await sizeRun(style, CSV)).blob();
      this.#put([new File([table], (style.name ?? "style") + ".csv", { type: CSV })]);
    } catch (error) {
      this.report.refuse(error instanceof Refused ? error.problem : { detail: say("wearer.silent") });
    }
  }

  refresh() {
    const { units } = this.store.style;
    if (units === this.units) return;
    this.units = units;
    this.#ask();
  }

  /** The files as a request for an answer in a media type; of pictures there are two. */
  async request(accept, signal, picture = "jumps") {
    const { files, fileUnits, baseSize, table, mapping = {} } = this.state;
    const { units } = this;
    const said = Object.fromEntries(Object.entries({ units, fileUnits, baseSize, sizeTable: table }).filter(([, value]) => value !== ""));
    const which = picture === "jumps" ? {} : { picture };
    const mapped = Object.keys(mapping).length > 0;
    if (files.length === 1) {
      const rows = mapped ? { mapping: JSON.stringify(mapping) } : {};
      return send("v1/checks?" + new URLSearchParams({ ...said, ...which, ...rows }), files[0], await typeOf(files[0]), accept, signal);
    }
    const form = new FormData();
    form.append("request", new Blob([JSON.stringify(mapped ? { ...said, mapping } : said)], { type: "application/json" }));
    for (const file of files) form.append("file", new File([file], file.name, { type: await typeOf(file) }));
    return send("v1/checks?" + new URLSearchParams(which), form, "", accept, signal);
  }

  async #ask() {
    this.#flight.abort();
    const flight = new AbortController();
    this.#flight = flight;
    if (this.state.files.length === 0) return this.report.wait();
    this.report.busy();
    try {
      const answer = await (await this.request("application/json", flight.signal)).json();
      const chart = await (await this.request("image/svg+xml", flight.signal)).blob();
      const outlines = (await typeOf(this.state.files[0])) === DXF;
      const nest = outlines ? await (await this.request("image/svg+xml", flight.signal, "nest")).blob() : null;
      if (!flight.signal.aborted) this.report.show(answer, chart, nest);
    } catch (error) {
      if (!(error instanceof Refused || error instanceof TypeError)) throw error;
      if (!flight.signal.aborted) this.report.refuse(error instanceof Refused ? error.problem : { detail: say("wearer.silent") });
    }
    return undefined;
  }
}
