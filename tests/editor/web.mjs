// Runs host/web.cjs in the worker of a real browser that an editor on the web keeps for extensions: no Node behind it,
// the language server in a worker of its own, files through the editor's file system.
//   node tests/editor/web.mjs      the extension as built by npm run build
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openWorkbench } from "./launcher/lib/workbench.mjs";

const root = join(import.meta.dirname, "../..");
const temporary = mkdtempSync(join(tmpdir(), "wayfile-web-"));
const folder = join(temporary, "examples");
cpSync(join(root, "examples"), folder, { recursive: true });

let output = "";
const workbench = await openWorkbench({
  folder,
  inBrowser: true,
  extensionDevelopmentPath: [root],
  extensionTestsPath: join(import.meta.dirname, "host/web.cjs"),
  disableExtensions: true,
  onTestOutput: (text) => {
    output += text;
    process.stdout.write(text);
  },
  onLog: (text) => process.env.WAYFILE_EDITOR_VERBOSE && console.error(text),
});
try {
  // It does not keep the process once there is a result.
  const limit = new Promise((done) => setTimeout(done, 240_000, new Error("No result after 240 s.")).unref());
  const result = await Promise.race([workbench.testExit, limit]);
  if (result !== 0 || !/^\d+ passed$/m.test(output)) {
    console.error(result instanceof Error ? result.message : "The tests in the browser failed.");
    await workbench.page.screenshot({ path: join(tmpdir(), "wayfile-web-failed.png") }).catch(() => {});
    process.exitCode = 1;
  }
} finally {
  await workbench.close();
  rmSync(temporary, { recursive: true, force: true, maxRetries: 5 });
}
