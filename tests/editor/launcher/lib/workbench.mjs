// Opens a real VS Code workbench on a machine without a desktop: VS Code's server,
// as the npm package code-server carries it, and a headless Chromium that
// playwright-core drives. bin/code and the screenshots stand on this.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";

const repository = path.resolve(import.meta.dirname, "../../../..");

/** Where setup.sh put code-server and playwright-core. */
const home = path.resolve(process.env.WAYFILE_EDITOR ?? path.join(repository, ".editor"));
const serverRoot = path.join(home, "node_modules/code-server/lib/vscode");
const serverMain = path.join(serverRoot, "out/server-main.js");

/** Settings for a profile that has none: nothing asks, updates or opens by itself. */
const quietSettings = {
  "chat.disableAIFeatures": true,
  "extensions.autoCheckUpdates": false,
  "extensions.autoUpdate": false,
  "extensions.ignoreRecommendations": true,
  "files.autoSave": "off",
  "git.enabled": false,
  "telemetry.telemetryLevel": "off",
  "update.mode": "none",
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.startupEditor": "none",
};

/** The VS Code version inside, e.g. "1.139.1". */
export const version = () => JSON.parse(readFileSync(path.join(serverRoot, "package.json"), "utf8")).version;

/** Runs the server's own command line, e.g. ["--install-extension", "x.vsix"], and returns its exit code. */
export function runServerCommand(args) {
  const run = spawnSync(findNode(), [serverMain, "--accept-server-license-terms", ...args], {
    env: environment(),
    stdio: "inherit",
  });
  if (run.error) throw run.error;
  return run.status ?? 1;
}

/**
 * Opens the workbench.
 * @param {object} options
 * @param {string} [options.userDataDir] the profile; a temporary one by default
 * @param {string} [options.extensionsDir] where a .vsix was installed
 * @param {string} [options.folder] the folder to open; an empty window by default
 * @param {string} [options.file] a file to open in it
 * @param {string[]} [options.extensionDevelopmentPath] extensions to load from their folders
 * @param {string} [options.extensionTestsPath] a module whose run() the extension host calls
 * @param {boolean} [options.inBrowser] loads the extensions and tests in a worker of the browser
 * @param {(text: string) => void} [options.onTestOutput] hears what tests in the browser print
 * @param {boolean} [options.disableExtensions] loads no installed extension
 * @param {Record<string, unknown>} [options.settings] beyond the quiet ones, for a profile that has none
 * @param {Record<string, string>} [options.env] for the extension host
 * @param {(line: string) => void} [options.onServerLine] hears the server
 * @param {(text: string) => void} [options.onLog] hears the window
 * @returns the Playwright page; testExit, which resolves to the tests' exit code; close()
 */
export async function openWorkbench(options) {
  // Holds the server's sockets, which it would otherwise leave behind, and the profile if none is named.
  const temporary = mkdtempSync(path.join(tmpdir(), "wayfile-editor-"));
  const userDataDir = options.userDataDir ?? path.join(temporary, "profile");
  const extensionsDir = options.extensionsDir ?? path.join(userDataDir, "extensions");
  const settingsFile = path.join(userDataDir, "User/settings.json");
  mkdirSync(path.dirname(settingsFile), { recursive: true });
  mkdirSync(extensionsDir, { recursive: true });
  if (!existsSync(settingsFile)) {
    writeFileSync(settingsFile, JSON.stringify({ ...quietSettings, ...options.settings }, null, 2));
  }

  const server = spawn(
    findNode(),
    [
      ...[serverMain, "--host", "127.0.0.1", "--port", "0", "--without-connection-token"],
      ...["--accept-server-license-terms", "--telemetry-level", "off", "--disable-workspace-trust"],
      ...["--server-data-dir", path.join(userDataDir, "server"), "--user-data-dir", userDataDir],
      ...["--extensions-dir", extensionsDir],
    ],
    {
      detached: true, // leads a process group, so that the whole tree can be ended
      env: environment({ XDG_RUNTIME_DIR: temporary, ...options.env }),
      stdio: ["ignore", "pipe", "pipe"],
    },
  );
  let browser;
  const reap = () => {
    // Should this process end without close().
    signalGroup(server, "SIGKILL");
    rmSync(temporary, { recursive: true, force: true });
  };
  process.once("exit", reap);
  const close = async () => {
    await browser?.close().catch(() => {});
    await endGroup(server);
    process.off("exit", reap);
    rmSync(temporary, { recursive: true, force: true, maxRetries: 5 });
  };

  try {
    const authority = `127.0.0.1:${await listeningPort(server, options.onServerLine ?? (() => {}))}`;
    const { chromium } = createRequire(path.join(home, "package.json"))("playwright-core");
    browser = await chromium.launch({
      executablePath: process.env.WAYFILE_EDITOR_CHROMIUM ?? "/usr/bin/chromium",
      args: [
        ...["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"],
        ...["--disable-background-networking", "--disable-component-update", "--disable-sync"],
      ],
    });
    const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });

    // The workbench calls these two, if they exist: the first with the verdict on
    // the tests, the second with each line of its log.
    let finish;
    const testExit = new Promise((resolve) => {
      finish = resolve;
    });
    await page.exposeFunction("codeAutomationExit", (code) => finish(code));
    await page.exposeFunction("codeAutomationLog", (_level, parts) => options.onLog?.(parts.join(" ")));
    page.on("crash", () => finish(new Error("The page crashed.")));
    page.on("console", (message) => {
      if (message.type() === "error" && /^No extension host found/.test(message.text())) {
        finish(new Error(message.text()));
      }
    });

    if (options.extensionDevelopmentPath?.length && options.inBrowser) {
      await page.addInitScript(addDevelopmentOptions, await servedFromDisk(page, authority, options));
    } else if (options.extensionDevelopmentPath?.length) {
      const remote = (file) => ({ scheme: "vscode-remote", authority, path: path.resolve(file) });
      await page.addInitScript(addDevelopmentOptions, {
        extensions: options.extensionDevelopmentPath.map(remote),
        extensionTestsPath: options.extensionTestsPath && remote(options.extensionTestsPath),
      });
    }
    // A machine that does other things as well takes its time over a workbench.
    page.setDefaultTimeout(300_000);
    await page.goto(address(authority, options));
    return { page, testExit, close };
  } catch (error) {
    await close();
    throw error;
  }
}

function address(authority, { folder, file, disableExtensions }) {
  const payload = [["skipWelcome", "true"], ["skipReleaseNotes", "true"]];
  if (disableExtensions) payload.push(["disableExtensions", "true"]);
  if (file) payload.push(["openFile", `vscode-remote://${authority}${encodeURI(path.resolve(file))}`]);
  const url = new URL(`http://${authority}/`);
  if (folder) url.searchParams.set("folder", path.resolve(folder));
  else url.searchParams.set("ew", "true");
  url.searchParams.set("payload", JSON.stringify(payload));
  return url.href;
}

/** Under this path of the workbench's own origin the browser finds the files of an extension and its tests. */
const diskPath = "/from-disk";

/**
 * A worker of the browser takes an extension from an address of the workbench's own origin only: requests below one path
 * of it are answered from the disk.
 */
async function servedFromDisk(page, authority, { extensionDevelopmentPath, extensionTestsPath, onTestOutput }) {
  const at = (file) => ({ scheme: "http", authority, path: diskPath + path.resolve(file) });
  const output = `http://${authority}${diskPath}?output`;
  const types = { ".js": "text/javascript", ".cjs": "text/javascript", ".json": "application/json", ".css": "text/css" };
  await page.context().route(
    (url) => url.host === authority && url.pathname.startsWith(diskPath),
    async (route) => {
      const address = route.request().url();
      if (address === output) {
        onTestOutput?.(route.request().postData() ?? "");
        return route.fulfill({ status: 204 });
      }
      const file = decodeURIComponent(new URL(address).pathname).slice(diskPath.length);
      if (!existsSync(file)) return route.fulfill({ status: 404 });
      const text = readFileSync(file);
      // A line ahead of the tests sends what they print.
      const body = file === extensionTestsPath ? `(${sendConsole})(${JSON.stringify(output)});${text}` : text;
      await route.fulfill({ body, contentType: types[path.extname(file)] ?? "application/octet-stream" });
    },
  );
  return {
    extensions: extensionDevelopmentPath.map(at),
    extensionTestsPath: extensionTestsPath && at(extensionTestsPath),
  };
}

/** Runs in the worker of the browser, from its source text. */
const sendConsole = `(url) => { for (const name of ["log", "error"]) { const original = console[name]; const value = (...all) => { const request = new XMLHttpRequest(); request.open("POST", url, false); request.send(all.map((one) => one?.stack ?? String(one)).join(" ") + "\\n"); original.apply(console, all); }; Object.defineProperty(console, name, { value, configurable: true, writable: true }); } }`;

/**
 * Runs in the page, before the workbench reads its configuration there. A released
 * workbench takes no extensions and tests to run from its address, but it does
 * from this element.
 */
function addDevelopmentOptions(added) {
  if (window !== window.top) return;
  new MutationObserver((_, observer) => {
    const element = document.getElementById("vscode-workbench-web-configuration");
    if (!element) return;
    observer.disconnect();
    const configuration = JSON.parse(element.dataset.settings);
    configuration.developmentOptions = { ...configuration.developmentOptions, ...added };
    element.dataset.settings = JSON.stringify(configuration);
  }).observe(document, { childList: true, subtree: true });
}

/** An empty gallery: the server would otherwise ask one over the network at every start. */
const environment = (extra) => ({ ...process.env, EXTENSIONS_GALLERY: "{}", ...extra });

/** The server wants Node 24: this process's own if it is that new, else the one that npm installed. */
function findNode() {
  if (!existsSync(serverMain)) throw new Error(`No editor in ${home}: run tests/editor/launcher/setup.sh first.`);
  if (process.env.WAYFILE_EDITOR_NODE) return process.env.WAYFILE_EDITOR_NODE;
  if (Number.parseInt(process.versions.node, 10) >= 24) return process.execPath;
  const installed = path.join(repository, `node_modules/node-${process.platform}-${process.arch}/bin/node`);
  if (existsSync(installed)) return installed;
  throw new Error("Node 24 is needed: run npm ci in the repository, or set WAYFILE_EDITOR_NODE.");
}

/** Waits for the line in which the server names its port, and keeps handing on lines after that. */
function listeningPort(server, onLine) {
  return new Promise((resolve, reject) => {
    let rest = "";
    const read = (chunk) => {
      const lines = (rest + chunk).split("\n");
      rest = lines.pop();
      for (const line of lines) {
        onLine(line);
        const port = /Extension host agent listening on (\d+)/.exec(line)?.[1];
        if (port) resolve(Number(port));
      }
    };
    server.stdout.setEncoding("utf8").on("data", read);
    server.stderr.setEncoding("utf8").on("data", read);
    server.once("error", reject);
    server.once("exit", (code, signal) => reject(new Error(`The editor's server ended early (${code ?? signal}).`)));
  });
}

/** Ends a process and all it started, asking first. */
async function endGroup(leader) {
  for (const signal of ["SIGTERM", "SIGKILL"]) {
    signalGroup(leader, signal);
    for (let i = 0; i < 40 && signalGroup(leader, 0); i++) await new Promise((done) => setTimeout(done, 50));
  }
}

/** Whether there was a process to get the signal. */
function signalGroup(leader, signal) {
  try {
    return process.kill(-leader.pid, signal);
  } catch {
    return false;
  }
}
