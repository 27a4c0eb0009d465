/**
 * Writes what is derived from tables and folders: `node grammar/generate.ts`. With `--check` it writes nothing and fails
 * where a file is out of date.
 */
import { globSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { outputs } from "./outputs.ts";

const root = path.dirname(import.meta.dirname);
const check = process.argv.includes("--check");
const stale: string[] = [];

for (const [file, text] of [...outputs(), ruleList()]) {
  const target = path.join(root, file);
  const before = read(target);
  if (before === text) continue;
  if (check) stale.push(file);
  else {
    mkdirSync(path.dirname(target), { recursive: true });
    writeFileSync(target, text);
    console.log(`wrote ${file}`);
  }
}
if (stale.length > 0) {
  console.error(`Out of date, run "npm run generate": ${stale.join(", ")}`);
  process.exitCode = 1;
}

function read(file: string): string | undefined {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return undefined;
  }
}

/** The folder is the list of checks: a rule is one file in a family's folder, whose default export it is. */
function ruleList(): [string, string] {
  const files = globSync("server/rules/*/*.ts", { cwd: root, exclude: ["server/rules/{common,frame}/**"] })
    .map((file) => file.replaceAll("\\", "/"))
    .sort();
  const rules = files.map((file) => {
    const parts = file.slice("server/rules/".length, -".ts".length);
    return { parts, name: parts.replace(/[-/](\w)/g, (_, letter: string) => letter.toUpperCase()) };
  });
  const imports = rules.map(({ parts, name }) => `import ${name} from "./${parts}.ts";`);
  const list = rules.map(({ name }) => `  ${name},`);
  const text = [
    "// Written by `npm run generate` from the folders here. Do not edit.",
    ...imports,
    'import type { Rule } from "./frame/rule.ts";',
    "",
    "export const rules: readonly Rule[] = [",
    ...list,
    "];",
    "",
  ];
  return ["server/rules/list.ts", text.join("\n")];
}
