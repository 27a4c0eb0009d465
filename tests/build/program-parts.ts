/**
 * A program in parts: one file with all that its first result needs, and a part for each thing that is loaded when it is
 * asked for. They are CommonJS: of such a script the program can keep what V8 compiled while it ran, and of an ES module
 * only what was compiled as it loaded.
 */
import { mkdir, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { type BuildOptions, type BuildResult, build, type Metafile, type Plugin } from "esbuild";
import { withPartsAtOnce } from "./late.ts";

interface ProgramParts {
  readonly metafile: Metafile;
  readonly warnings: number;
  /** The file that is loaded at once. */
  readonly first: string;
  /** Bytes of the file that is loaded at once, and of all. */
  readonly atOnce: number;
  readonly all: number;
}

/** Modules by the name they import each other under. */
type Modules = ReadonlyMap<string, string>;

/** How the parts of a program find each other. */
export interface Loading {
  readonly extension: "cjs" | "js";
  /** A part as its file holds it. */
  inFile(name: string, text: string): string;
}

/** Node wraps a file by itself, and `require` finds the others. The first file is read as one byte a sign. */
const onNode: Loading = { extension: "cjs", inFile: (name, text) => (name === "main.cjs" ? inAscii(text) : text) };

/**
 * What a bundler leaves in patterns and in raw templates, which are the text of patterns: one sign of two bytes would make
 * two of every other in memory, and twice as much to read at every start.
 */
const inAscii = (text: string): string =>
  text.replace(/[^\p{ASCII}]/gu, (sign) =>
    [...Array(sign.length).keys()].map((at) => `\\u${sign.charCodeAt(at).toString(16).padStart(4, "0")}`).join(""),
  );

/**
 * In a worker of a browser each file hands its part over by its name, and one that is asked for and not there yet is
 * fetched from where the parts lie, which the program learns with the first message.
 */
export const inWorker: Loading = {
  extension: "js",
  inFile: (name, text) => {
    const part = `self.wayfilePart("./${name}", (module, exports, require) => {${text}\n});\n`;
    return name === "main.js" ? `${loader}${part}self.wayfileStart();\n` : part;
  },
};

const loader = `"use strict";(() => {
const makes = new Map(), made = new Map();
const require = (name) => {
  const before = made.get(name);
  if (before) return before.exports;
  if (!makes.has(name)) importScripts(self.wayfileParts + name.slice(2));
  const module = { exports: {} };
  made.set(name, module);
  makes.get(name)(module, module.exports, require);
  return module.exports;
};
self.wayfilePart = (name, make) => makes.set(name, make);
self.wayfileStart = () => require("./main.js");
})();
`;

/** `options`: how the program is bundled, with its one entry as `main`. */
export async function buildInParts(
  { entryPoints, plugins, ...options }: BuildOptions,
  outdir: string,
  loading: Loading = onNode,
): Promise<ProgramParts> {
  const fileOf = (name: string): string => name.replace(/^\.\/(.*)\.mjs$/, `$1.${loading.extension}`);
  const { outputFiles, metafile, warnings } = await build({
    ...options,
    ...(entryPoints ? { entryPoints } : {}),
    ...(plugins ? { plugins } : {}),
    outdir,
    format: "esm",
    splitting: true,
    write: false,
    metafile: true,
    banner: {},
    define: {},
    chunkNames: "[name]-[hash]",
    outExtension: { ".js": ".mjs" },
  });
  const modules: Modules = new Map(outputFiles.map(({ path, text }) => [`./${basename(path)}`, withPartsAtOnce(text)]));
  const imports = importsIn(metafile);
  const atOnce = closureOf("./main.mjs", imports);
  const isApart = (name: string): boolean => !atOnce.has(name);
  const lent = [...atOnce].filter((name) => [...imports].some(([from, to]) => isApart(from) && to.has(name)));
  await mkdir(outdir, { recursive: true });
  const common = {
    ...options,
    outdir,
    write: false,
    format: "cjs",
    metafile: false,
    // A part is asked for by require(): it need not be found twice.
    supported: { "dynamic-import": false },
  } as const;
  const files = new Map<string, string>();
  const main = await build({
    ...common,
    charset: "ascii",
    stdin: { contents: beginning(lent, exportsIn(metafile)), resolveDir: options.absWorkingDir ?? "." },
    plugins: [inMemory(modules, atOnce, fileOf)],
  });
  files.set(fileOf("./main.mjs"), textOf(main));
  for (const [name] of [...modules].filter(([name]) => isApart(name))) {
    const part = await build({
      ...common,
      entryPoints: [name],
      plugins: [inMemory(modules, new Set([name]), fileOf, lent)],
    });
    files.set(fileOf(name), textOf(part));
  }
  const written = new Map([...files].map(([name, text]) => [name, loading.inFile(name, text)]));
  await Promise.all([...written].map(([name, text]) => writeFile(join(outdir, name), text)));
  const sizes = [...written.values()].map((text) => Buffer.byteLength(text));
  return {
    metafile,
    warnings: warnings.length,
    first: written.get(fileOf("./main.mjs")) ?? "",
    atOnce: Buffer.byteLength(written.get(fileOf("./main.mjs")) ?? ""),
    all: sizes.reduce((sum, size) => sum + size, 0),
  };
}

/**
 * The program's first file: it runs the entry, and lends the parts what they share with it. That is listed when the
 * first part asks for it: there are more names than a start should have to make.
 */
const beginning = (lent: readonly string[], names: ReadonlyMap<string, readonly string[]>): string =>
  [
    'import "./main.mjs";',
    ...lent.flatMap((name, index) => {
      const own = (names.get(name) ?? []).map((one, at) => ({ one, here: `${lentAs(index)}_${at}` }));
      return [
        `import { ${own.map(({ one, here }) => `${one} as ${here}`).join(", ")} } from ${JSON.stringify(name)};`,
        `export const ${lentAs(index)} = () => ({ ${own.map(({ one, here }) => `get ${one}() { return ${here}; }`).join(", ")} });`,
      ];
    }),
  ].join("\n");

const lentAs = (index: number): string => `part${index}`;

/** Bundles some of the modules together; of the others, those the first file lends are taken from it. */
function inMemory(
  modules: Modules,
  together: ReadonlySet<string>,
  fileOf: (name: string) => string,
  lent: readonly string[] = [],
): Plugin {
  return {
    name: "in-memory",
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /^\.\/.*\.mjs$/ }, ({ path }) => {
        if (!modules.has(path)) return undefined;
        if (together.has(path)) return { path, namespace: "module" };
        return lent.includes(path)
          ? { path: fileOf(path), namespace: "lent", pluginData: path }
          : { path: `./${fileOf(path)}`, external: true };
      });
      onResolve({ filter: /^\.\.?\// }, ({ path }) => ({ path, external: true }));
      onLoad({ filter: /.*/, namespace: "module" }, ({ path }) => ({
        contents: modules.get(path) ?? "",
        loader: "js",
      }));
      onLoad({ filter: /.*/, namespace: "lent" }, ({ pluginData }) => ({
        contents: `module.exports = require("./${fileOf("./main.mjs")}").${lentAs(lent.indexOf(pluginData))}();`,
        loader: "js",
      }));
    },
  };
}

type Imports = ReadonlyMap<string, ReadonlySet<string>>;

/** What each module imports at once. */
function importsIn({ outputs }: Metafile): Imports {
  return new Map(
    Object.entries(outputs).map(([path, { imports }]) => {
      const needed = imports.filter(({ kind, external }) => kind === "import-statement" && !external);
      return [`./${basename(path)}`, new Set(needed.map(({ path }) => `./${basename(path)}`))];
    }),
  );
}

/** The names that each module exports. */
const exportsIn = ({ outputs }: Metafile): ReadonlyMap<string, readonly string[]> =>
  new Map(Object.entries(outputs).map(([path, { exports }]) => [`./${basename(path)}`, exports]));

function closureOf(entry: string, imports: Imports): ReadonlySet<string> {
  const all = new Set([entry]);
  for (const name of all) for (const next of imports.get(name) ?? []) all.add(next);
  return all;
}

const textOf = ({ outputFiles }: BuildResult): string => outputFiles?.[0]?.text ?? "";
