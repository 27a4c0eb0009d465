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
