/** The command line as one file, as it is shipped: threads start faster from it than from the sources. */
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";

const root = join(import.meta.dirname, "../..");
let built: Promise<string> | undefined;

/** The path of the file, which is made once. */
export function builtProgram(): Promise<string> {
  built ??= make();
  return built;
}

async function make(): Promise<string> {
  const outfile = join(mkdtempSync(join(tmpdir(), "wayfile-program-")), "wayfile.cjs");
  await build({
    absWorkingDir: root,
    entryPoints: ["server/main.cli.ts"],
    outfile,
    bundle: true,
    platform: "node",
    format: "cjs",
    define: {
      "import.meta.filename": "__filename",
      "import.meta.dirname": "__dirname",
      "import.meta.url": "bundleUrl",
    },
    banner: { js: 'const bundleUrl = require("node:url").pathToFileURL(__filename).href;' },
    logLevel: "error",
  });
  return outfile;
}
