// A small client of chromedriver (W3C WebDriver) for the scripts that look at the page: Debian's chromium and chromium-driver, nothing else.

import { spawn } from "node:child_process";
import { setTimeout as wait } from "node:timers/promises";

const PATIENCE = 60_000;

export class Browser {
  /** Starts a browser that has seen nothing yet. */
  static async start(port = 9700 + (process.pid % 200)) {
    const driver = spawn("chromedriver", ["--port=" + port], { stdio: "ignore" });
    const browser = new Browser(driver, `http://127.0.0.1:${port}/session`);
    for (const end = Date.now() + PATIENCE; Date.now() < end; await wait(100)) {
      try {
        const args = ["--headless=new", "--no-sandbox", "--disable-gpu", "--enable-unsafe-swiftshader", "--hide-scrollbars", "--lang=en"];
        browser.at += "/" + (await browser.send("POST", "", { capabilities: { alwaysMatch: { browserName: "chrome", "goog:chromeOptions": { args } } } })).sessionId;
        return browser;
      } catch (problem) {
        if (problem.cause?.code !== "ECONNREFUSED") throw problem;
      }
    }
    throw new Error("chromedriver does not answer");
  }

  constructor(driver, at) {
    this.driver = driver;
    this.at = at;
  }

  async send(method, path, body) {
    const answer = await fetch(this.at + path, { method, body: body && JSON.stringify(body) });
    const { value } = await answer.json();
    if (value?.error) throw new Error(`${value.error}: ${value.message.split("\n")[0]}`);
    return value;
  }

  go(url) {
    return this.send("POST", "/url", { url });
  }

  /** Runs a script in the page; what it returns, waited for. */
  run(script, ...args) {
    return this.send("POST", "/execute/sync", { script, args });
  }

  cdp(cmd, params = {}) {
    return this.send("POST", "/goog/cdp/execute", { cmd, params });
  }

  /** Another room for the page, in CSS pixels, and light or dark. */
  async look(width, height, scheme) {
    await this.cdp("Emulation.setDeviceMetricsOverride", { width, height, deviceScaleFactor: 1, mobile: false });
    await this.cdp("Emulation.setEmulatedMedia", { media: "", features: [{ name: "prefers-color-scheme", value: scheme }] });
  }

  /** Waits until a script returns something true. */
  async until(script, ...args) {
    for (const end = Date.now() + PATIENCE; Date.now() < end; await wait(25)) if (await this.run(script, ...args)) return;
    throw new Error("waited in vain for " + script);
  }

  /** Waits until drawing and tables show what was asked for last. */
  settled() {
    return this.until(
      "const page = document.getElementById('page'); return !!page && !page.classList.contains('busy') && !!document.querySelector('.cloth svg') && !!document.querySelector('#panel-spec tbody tr');",
    );
  }

  /** Clicks what the page itself would let a finger reach. */
  async click(selector) {
    await this.run("const e = document.querySelector(arguments[0]); e.scrollIntoView({block: 'center'}); e.click();", selector);
  }

  /** Keys to an input. Where an answer that comes meanwhile draws it anew, it is looked for again. */
  async type(selector, text, tries = 4) {
    const found = await this.send("POST", "/element", { using: "css selector", value: selector });
    try {
      await this.run("const e = arguments[0]; e.closest('details')?.setAttribute('open', ''); e.scrollIntoView({block: 'center', inline: 'center'}); e.focus(); e.select?.();", found);
      await this.send("POST", `/element/${Object.values(found)[0]}/value`, { text });
    } catch (problem) {
      if (tries === 1) throw problem;
      await wait(250);
      await this.type(selector, text, tries - 1);
    }
  }

  /** What is seen, as PNG; a page longer than the screen whole, up to a bound. */
  async picture(most = 0) {
    const { width, height, long } = await this.run("return { width: innerWidth, height: innerHeight, long: document.documentElement.scrollHeight };");
    const clip = { x: 0, y: 0, width, height: Math.min(Math.max(long, height), Math.max(most, height)), scale: 1 };
    const { data } = await this.cdp("Page.captureScreenshot", { format: "png", captureBeyondViewport: clip.height > height, clip });
    return Buffer.from(data, "base64");
  }

  async close() {
    await this.send("DELETE", "").catch(() => undefined);
    this.driver.kill();
  }
}
