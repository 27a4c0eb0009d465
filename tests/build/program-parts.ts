/**
 * A program in parts: one file with all that its first result needs, and a part for each thing that is loaded when it is
 * asked for. They are CommonJS: of such a script the program can keep what V8 compiled while it ran, and of an ES module
 * only what was compiled as it loaded.
 */
import { mkdir, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { type BuildOptions, type BuildResult, build, type Metafile, type Plugin } from "esbuild";

export interface ProgramParts {
  readonly metafile: Metafile;
  readonly warnings: number;
  /** Bytes of the file that is loaded at once, and of all. */
  readonly atOnce: number;
  readonly all: number;
}

/** Modules by the name they import each other under. */
type Modules = ReadonlyMap<string, string>;

/** `options`: how the program is bundled, with its one entry as `main`. */
export async function buildInParts(
  { entryPoints, plugins, ...options }: BuildOptions,
  outdir: string,
): Promise<ProgramParts> {
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
  const modules: Modules = new Map(outputFiles.map(({ path, text }) => [`./${basename(path)}`, text]));
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
    // Nearly all of it is then one byte a sign, which is decoded quickest. What is left in patterns and templates is not.
    charset: "ascii",
    stdin: { contents: beginning(lent, exportsIn(metafile)), resolveDir: options.absWorkingDir ?? "." },
    plugins: [inMemory(modules, atOnce)],
  });
  files.set("main.cjs", textOf(main));
  for (const [name] of [...modules].filter(([name]) => isApart(name))) {
    const part = await build({
      ...common,
      entryPoints: [name],
      plugins: [inMemory(modules, new Set([name]), lent)],
    });
    files.set(fileOf(name), textOf(part));
  }
  await Promise.all([...files].map(([name, text]) => writeFile(join(outdir, name), text)));
  const sizes = [...files.values()].map((text) => Buffer.byteLength(text));
  return {
    metafile,
    warnings: warnings.length,
    atOnce: Buffer.byteLength(files.get("main.cjs") ?? ""),
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

const fileOf = (name: string): string => name.replace(/^\.\/(.*)\.mjs$/, "$1.cjs");

/** Bundles some of the modules together; of the others, those the first file lends are taken from it. */
function inMemory(modules: Modules, together: ReadonlySet<string>, lent: readonly string[] = []): Plugin {
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
        contents: `module.exports = require("./main.cjs").${lentAs(lent.indexOf(pluginData))}();`,
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
