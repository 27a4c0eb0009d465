// The page of the live view in a browser, with the real language server behind it and a stand-in for the editor between
// them: what the editor's own code does for the page is a screen of lines, and is tested in the workbench.
import { spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver/node";

const repository = path.resolve(import.meta.dirname, "../../../..");
const home = path.resolve(process.env.WAYFILE_EDITOR ?? path.join(repository, ".editor"));
const require = createRequire(path.join(home, "package.json"));

export async function openBrowser() {
  const { chromium } = require("playwright-core");
  return await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox"] });
}

/** The language server with one document in it. */
export async function startServer(file, text = readFileSync(file, "utf8")) {
  const server = spawn(process.execPath, [path.join(repository, "dist/server.cjs"), "--stdio"], { stdio: "pipe" });
  const connection = createProtocolConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin));
  connection.listen();
  const uri = `file://${path.resolve(file)}`;
  await connection.sendRequest("initialize", { processId: process.pid, rootUri: null, capabilities: {} });
  await connection.sendNotification("initialized", {});
  let version = 1;
  await connection.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId: "wayfile", version, text },
  });
  return {
    uri,
    get text() {
      return text;
    },
    request: (method, parameters) => connection.sendRequest(method, { uri, ...parameters }),
    raw: (method, parameters) => connection.sendRequest(method, parameters),
    /** The whole text anew, or edits as the protocol has them, which are made one after the other from the last. */
    async change(next, edits) {
      text = next;
      version++;
      await connection.sendNotification("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: edits ?? [{ text }],
      });
    },
    get version() {
      return version;
    },
    async stop() {
      await connection.sendRequest("shutdown");
      await connection.sendNotification("exit");
      connection.dispose();
    },
  };
}

/** Colours as the editor's own themes give them to a page. */
export const themes = {
  light: { "editor-foreground": "#3b3b3b", "editor-background": "#ffffff", descriptionForeground: "#3b3b3b", "editorWidget-border": "#c8c8c8", "textLink-foreground": "#005fb8", focusBorder: "#005fb8", "editor-inactiveSelectionBackground": "#e5ebf1", "editorError-foreground": "#e51400", "editorWarning-foreground": "#bf8803", errorForeground: "#b3261e", "input-background": "#ffffff", "input-foreground": "#3b3b3b", "input-border": "#8b8b8b", "button-secondaryBackground": "#e5e5e5", "button-secondaryForeground": "#3b3b3b" },
  dark: { "editor-foreground": "#cccccc", "editor-background": "#1f1f1f", descriptionForeground: "#9d9d9d", "editorWidget-border": "#454545", "textLink-foreground": "#4daafc", focusBorder: "#0078d4", "editor-inactiveSelectionBackground": "#3a3d41", "editorError-foreground": "#f14c4c", "editorWarning-foreground": "#cca700", errorForeground: "#f85149", "input-background": "#313131", "input-foreground": "#cccccc", "input-border": "#6b6b6b", "button-secondaryBackground": "#313131", "button-secondaryForeground": "#cccccc" },
  "hc-dark": { "editor-foreground": "#ffffff", "editor-background": "#000000", descriptionForeground: "#ffffff", contrastBorder: "#6fc3df", "editorWidget-border": "#6fc3df", "textLink-foreground": "#21a6ff", focusBorder: "#f38518", "editor-inactiveSelectionBackground": "#3a3d41", "editorError-foreground": "#f48771", "editorWarning-foreground": "#ffd370", errorForeground: "#f48771", "input-background": "#000000", "input-foreground": "#ffffff", "input-border": "#6fc3df", "button-secondaryBackground": "#000000", "button-secondaryForeground": "#ffffff" },
  "hc-light": { "editor-foreground": "#292929", "editor-background": "#ffffff", descriptionForeground: "#292929", contrastBorder: "#0f4a85", "editorWidget-border": "#0f4a85", "textLink-foreground": "#0f4a85", focusBorder: "#006bbd", "editor-inactiveSelectionBackground": "#e5ebf1", "editorError-foreground": "#b5200d", "editorWarning-foreground": "#895503", errorForeground: "#b5200d", "input-background": "#ffffff", "input-foreground": "#292929", "input-border": "#0f4a85", "button-secondaryBackground": "#ffffff", "button-secondaryForeground": "#292929" },
};

/**
 * The page with a server behind it.
 * @param {object} options
 * @param {object} options.browser as openBrowser gives it
 * @param {object} options.server as startServer gives it
 * @param {{width: number, height: number}} [options.size]
 * @param {keyof typeof themes} [options.theme]
 * @param {unknown} [options.state] what the page had saved
 * @param {(message: object) => Promise<void> | void} [options.hear] messages that the stand-in does not answer itself
 */
export async function openPage({ browser, server, size = { width: 1000, height: 800 }, theme = "light", state, hear }) {
  const context = await browser.newContext({ viewport: size });
  const page = await context.newPage();
  const problems = [];
  page.on("pageerror", (error) => problems.push(error.message));
  page.on("console", (line) => line.type() === "error" && problems.push(line.text()));
  const revealed = [];
  let wanted;
  let position;
  const show = async () => {
    if (!wanted) return;
    const answer = await server.request("wayfile/view", { ...wanted, ...(position ? { position } : {}) });
    await page.evaluate((message) => window.postMessage(message, "*"), { kind: "view", view: wanted.view, answer });
  };
  const undo = [];
  let entering = Promise.resolve();
  const tell = (message) => page.evaluate((one) => window.postMessage(one, "*"), message);
  const enter = async ({ row, column, text, ...rest }) => {
    const answer = await server.request("wayfile/enter", { row, column, text, ...rest });
    const { edit, written, stands, problem } = answer;
    if (edit) {
      undo.push(server.text);
      const offset = ({ line, character }) => server.text.split("\n").slice(0, line).join("\n").length + (line > 0 ? 1 : 0) + character;
      await server.change(server.text.slice(0, offset(edit.range.start)) + edit.newText + server.text.slice(offset(edit.range.end)));
    }
    await tell({ kind: "entered", entered: { row, column, text, ...(edit ? { written } : stands === undefined ? { problem } : { stands }) } });
    if (edit) await show();
  };
  await page.exposeFunction("tellEditor", async (message) => {
    if (message.kind === "show") {
      wanted = { view: message.view, ...(message.board === undefined ? {} : { board: message.board }) };
      await show();
    } else if (message.kind === "reveal") revealed.push(message.at);
    else if (message.kind === "enter") entering = entering.then(() => enter(message));
    else if (message.kind === "undo") {
      await entering;
      const before = undo.pop();
      if (before !== undefined) await server.change(before);
      await show();
    }
    else await hear?.(message, { page, show });
  });
  const colours = Object.entries(themes[theme]).map(([name, value]) => `--vscode-${name}: ${value};`);
  const css = readFileSync(path.join(repository, "dist/page.css"), "utf8");
  const script = readFileSync(path.join(repository, "dist/page.js"), "utf8");
  // The same policy as in the editor, so that what it would refuse is refused here.
  await page.route("http://page.invalid/**", (route) => {
    const name = new URL(route.request().url()).pathname;
    if (name === "/page.css") return route.fulfill({ contentType: "text/css", body: `:root{${colours.join("")}}${css}` });
    if (name === "/page.js") return route.fulfill({ contentType: "text/javascript", body: script });
    if (name === "/editor.js")
      return route.fulfill({
        contentType: "text/javascript",
        body: `const kept = ${JSON.stringify({ state })}; window.acquireVsCodeApi = () => ({ postMessage: (m) => window.tellEditor(m), getState: () => kept.state, setState: (s) => { kept.state = s; window.savedState = s; } });`,
      });
    if (name !== "/") return route.fulfill({ status: 404, body: "" });
    return route.fulfill({
      contentType: "text/html",
      body: `<!DOCTYPE html><html lang="en-GB"><head><meta charset="utf-8"><title>Live Board</title>
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src http://page.invalid; script-src http://page.invalid">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="stylesheet" href="/page.css"></head><body><div id="app"></div><script src="/editor.js"></script><script src="/page.js"></script></body></html>`,
    });
  });
  await page.goto("http://page.invalid/");
  return {
    page,
    problems,
    revealed,
    show,
    /** Once all that was entered is written. */
    settled: () => entering,
    async moveTo(line, character = 0) {
      position = { line, character };
      await show();
      await page.evaluate((message) => window.postMessage(message, "*"), { kind: "cursor", line });
    },
    /** What the accessibility checker finds. */
    async axe() {
      await page.evaluate(readFileSync(path.join(repository, "node_modules/axe-core/axe.min.js"), "utf8"));
      const { violations } = await page.evaluate(() => window.axe.run({ resultTypes: ["violations"] }));
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(" | ")}`);
    },
    close: () => context.close(),
  };
}
