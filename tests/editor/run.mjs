// Runs the tests in the extension host of a real VS Code.
//
//   node tests/editor/run.mjs            the extension from this repository, as built by npm run build
//   node tests/editor/run.mjs --vsix     the packed .build/wayfile.vsix, installed, as built by npm run package
//
// The editor is the headless one of tests/editor/launcher, set up by its setup.sh,
// or $VSCODE_EXECUTABLE; with VSCODE_EXECUTABLE=download the desktop application.
import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { runTests } from "@vscode/test-electron";

const root = join(import.meta.dirname, "../..");
const launcher = join(import.meta.dirname, "launcher");
const chosen = process.env.VSCODE_EXECUTABLE || join(launcher, "bin/code");
const vsix = process.argv.includes("--vsix");

// A copy, since the tests save files, and a fresh profile, so that no run knows of another.
const temporary = mkdtempSync(join(tmpdir(), "wayfile-test-"));
const workspace = join(temporary, "examples");
cpSync(join(root, "examples"), workspace, { recursive: true });

try {
  const extensions = join(temporary, "extensions");
  if (vsix) install(join(root, ".build/wayfile.vsix"), extensions);
  await runTests({
    ...(chosen === "download" ? {} : { vscodeExecutablePath: chosen }),
    extensionDevelopmentPath: vsix ? join(launcher, "companion") : root,
    extensionTestsPath: join(import.meta.dirname, "host/index.cjs"),
    extensionTestsEnv: { WAYFILE_TESTS_RESULT: process.env.WAYFILE_TESTS_RESULT },
    launchArgs: [
      workspace,
      `--user-data-dir=${join(temporary, "profile")}`,
      `--extensions-dir=${extensions}`,
      ...(vsix ? [] : ["--disable-extensions"]),
    ],
  });
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
} finally {
  rmSync(temporary, { recursive: true, force: true, maxRetries: 5 });
}

function install(file, extensions) {
  if (!existsSync(file)) throw new Error(`${file} is missing: run npm run package first.`);
  mkdirSync(extensions, { recursive: true });
  const { status, error } = spawnSync(chosen, [`--extensions-dir=${extensions}`, "--install-extension", file], {
    stdio: "inherit",
  });
  if (error) throw error;
  if (status !== 0) throw new Error("The .vsix could not be installed.");
}
