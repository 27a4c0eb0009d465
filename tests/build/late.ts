/**
 * Parts that a program loads in the middle of a sentence. What is worded of a line that does not fit, and what a
 * repository has set, is asked for at once and not in a promise; most starts never ask. In place of such a file its
 * functions stand, each of which loads it when it is first called: on Node by `require`, in a worker by `importScripts`.
 */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Plugin } from "esbuild";

/** A name that nothing has: what stands in its brackets is asked for at once. */
const atOnce = "wayfileAtOnce";

/** As a bundler has left it. */
export const withPartsAtOnce = (text: string): string =>
  text.replaceAll(new RegExp(String.raw`${atOnce}\(import\(("[^"]+")\)\)`, "g"), "require($1)");

/** `files` export nothing but functions and types. They know each other as they are. */
export function late(root: string, files: readonly string[]): Plugin {
  const paths = new Set(files.map((file) => join(root, file)));
  return {
    name: "late",
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /^\.\.?\/.*\.ts$/ }, ({ path, kind, importer, resolveDir }) => {
        const whole = join(resolveDir, path);
        const isLate = kind === "import-statement" && paths.has(whole) && !paths.has(importer);
        return isLate ? { path: whole, namespace: "late" } : undefined;
      });
      onLoad({ filter: /.*/, namespace: "late" }, async ({ path }) => {
        const names = functionsOf(await readFile(path, "utf8"), path);
        const lent = names.map((name) => `export const ${name} = (...given) => part().${name}(...given);`);
        const part = `let made;\nconst part = () => (made ??= ${atOnce}(import(${JSON.stringify(path)})));`;
        return { contents: [part, ...lent].join("\n"), resolveDir: root };
      });
    },
  };
}

function functionsOf(text: string, path: string): readonly string[] {
  const exported = [...text.matchAll(/^export (?!type |interface )(.*)$/gm)].map(([, line = ""]) => line);
  return exported.map((line) => {
    const name = /^(?:function\*? (\w+)|const (\w+)(?:: [^=]+)? = (?:<[^>]+>)?\()/.exec(line);
    if (!name) throw new Error(`${path} exports what is no function: ${line}`);
    return name[1] ?? name[2] ?? "";
  });
}
