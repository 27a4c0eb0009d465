/**
 * Builds what is shipped: one file each for the extension, the language server and the command line.
 * `node tests/build/bundle.ts`, or `npm run build`.
 */
import { hash } from "node:crypto";
import { chmod, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { brotliCompressSync } from "node:zlib";
import { type BuildOptions, build, type Metafile, type Plugin, transform } from "esbuild";
import { checkPageMarkdown } from "../../server/features/check-page.ts";
import { plainFont } from "../../server/papers/font-tables.ts";
import { pages } from "../../server/rules/frame/catalogue.ts";
import { settingsSchema } from "../../server/settings/schema.ts";
import { recordedAside, withoutLayoutOfJson } from "./at-load.ts";
import { late } from "./late.ts";
import { buildInParts, inWorker, type Loading } from "./program-parts.ts";

const root = join(import.meta.dirname, "../..");
const dist = join(root, "dist");

const shared = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  metafile: true,
  platform: "node",
  // The editor loads an extension with require(), and its oldest release that we support runs Node 22.
  format: "cjs",
  target: "node22",
  // CommonJS has no import.meta: two of its parts have twins, and who asks for the third makes a `require` of it, which
  // takes the path as well.
  define: {
    "import.meta.dirname": "__dirname",
    "import.meta.filename": "__filename",
    "import.meta.url": "__filename",
  },
  // The CommonJS edition of it asks for its parts in a way that no bundler sees.
  alias: { "jsonc-parser": join(root, "node_modules/jsonc-parser/lib/esm/main.js") },
  charset: "utf8", // Ω as itself, not as six signs
  legalComments: "none", // third-party.txt has the licences in full
  logLevel: "warning",
} satisfies BuildOptions;

const ahead = '"use strict";';

/** No finding needs the samples of a check: a program is the smaller without them. */
const withoutSamples: Plugin = {
  name: "without-samples",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]server[\\/]rules[\\/][^\\/]+[\\/][^\\/]+\.ts$/ }, async ({ path }) => {
      const contents = withoutExamples(await readFile(path, "utf8"));
      return { contents, loader: "ts" };
    });
  },
};

/** Nor why a check matters. */
const withoutReasons: Plugin = {
  name: "without-reasons",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]server[\\/]rules[\\/][^\\/]+[\\/][^\\/]+\.ts$/ }, async ({ path }) => {
      const contents = withoutReason(withoutExamples(await readFile(path, "utf8")));
      return { contents, loader: "ts" };
    });
  },
};

const withoutExamples = (text: string): string =>
  text.replace(/^( +)examples: \[\n.*?^\1\],\n/gms, "").replace(/^( +)examples: \[(\{.*\})?\],$/gm, "");

const withoutReason = (text: string): string =>
  text.replace(/^( +)why:\s+(?:"(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`),$/gm, "").replace(/^ +since: "0\.1",$/gm, "");

const withReasons: Plugin = {
  name: "with-reasons",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]server[\\/]rules[\\/]frame[\\/]reasons\.ts$/ }, () => {
      const reasons = JSON.stringify(Object.fromEntries(pages.map(({ id, why }) => [id, why])));
      const contents = `import { presentId } from "./former-ids.ts";\nconst reasons = JSON.parse(${JSON.stringify(reasons)});\nexport const reasonOf = (check) => reasons[presentId(check)] ?? "";`;
      return { contents, loader: "ts", resolveDir: join(root, "server/rules/frame") };
    });
  },
};

/** Nor what the words of the vocabulary mean, and what a table is for: each text is a number there, and stands where it is asked for. */
const withProse: Plugin = {
  name: "with-prose",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]grammar[\\/]vocabulary\.ts$/ }, async () => ({
      contents: (await vocabularyApart()).words,
      loader: "ts",
    }));
    onLoad({ filter: /[\\/]server[\\/]tables[\\/][^\\/]+\.ts$/ }, async ({ path }) => ({
      contents: withoutTableProse(await readFile(path, "utf8")),
      loader: "ts",
    }));
    onLoad({ filter: /[\\/]grammar[\\/]prose\.ts$/ }, async () => {
      const { prose } = await vocabularyApart();
      const ofTables = await proseOfTables();
      const contents = `const prose = { ${[...prose, ...ofTables].join(", ")} };\nexport const proseOf = (written) => prose[written] ?? written;`;
      return { contents, loader: "js" };
    });
  },
};

/** The vocabulary with a number for each text, and the texts by number. */
async function vocabularyApart(): Promise<{ words: string; prose: readonly string[] }> {
  const text = await readFile(join(root, "grammar/vocabulary.ts"), "utf8");
  const numbers = new Map<string, string>();
  const words = text.replace(
    /\b(means|background|limits):\s*("(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*')/g,
    (_, field, literal) => {
      const number = numbers.get(literal) ?? `#${numbers.size.toString(36)}`;
      numbers.set(literal, number);
      return `${field}: "${number}"`;
    },
  );
  return { words, prose: [...numbers].map(([literal, number]) => `"${number}": ${literal}`) };
}

/** What a table is for, and the notes below it. */
const tableProse = /^ {2}(?:applies:\s*"|notes: \[).*?(?:",|\],)$/gms;
const literals = /"(?:[^"\\\n]|\\.)*"/g;

/** Known by what it says: each table is read by itself. */
const proseName = (literal: string): string => `"#${hash("sha256", literal, "hex").slice(0, 5)}"`;

const withoutTableProse = (text: string): string =>
  text.replace(tableProse, (prose) => prose.replace(literals, proseName));

async function proseOfTables(): Promise<string[]> {
  const folder = join(root, "server/tables");
  const files = (await readdir(folder)).filter((name) => name.endsWith(".ts")).sort();
  const texts = await Promise.all(files.map((name) => readFile(join(folder, name), "utf8")));
  const said = texts.flatMap((text) => text.match(tableProse) ?? []).flatMap((prose) => prose.match(literals) ?? []);
  const named = Map.groupBy(new Set(said), proseName);
  for (const [name, alike] of named) if (alike.length > 1) throw new Error(`${name} stands for ${alike.join(" and ")}`);
  return [...named].map(([name, [literal]]) => `${name}: ${literal}`);
}

/** A whole package.json for one number would be the largest thing that nobody reads. */
const withVersion: Plugin = {
  name: "with-version",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]package\.json$/ }, async ({ path }) => {
      const { version } = JSON.parse(await readFile(path, "utf8"));
      return path === join(root, "package.json")
        ? { contents: JSON.stringify({ version }), loader: "json" }
        : undefined;
    });
  },
};

/** The samples of all checks, as plain data in a part of their own. */
const withSamples: Plugin = {
  name: "with-samples",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]server[\\/]rules[\\/]frame[\\/]samples\.ts$/ }, () => {
      const samples = JSON.stringify(Object.fromEntries(pages.map(({ id, examples }) => [id, examples])));
      const contents = `const samples = JSON.parse(${JSON.stringify(samples)});\nexport const samplesOf = (check) => samples[check] ?? [];`;
      return { contents, loader: "js" };
    });
  },
};

/** Node's cryptography takes longer to load than all checks, and the protocol's library asks it for names alone. */
const withoutCryptography: Plugin = {
  name: "without-cryptography",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]vscode-jsonrpc[\\/]lib[\\/]node[\\/](?:main|ril)\.js$/ }, async ({ path }) => {
      const asked = 'require("crypto")';
      const late = `{ randomBytes: (size) => ${asked}.randomBytes(size), randomUUID: () => ${asked}.randomUUID() }`;
      const contents = await readFile(path, "utf8");
      if (!contents.includes(asked)) throw new Error(`${path} does not ask for cryptography any more.`);
      return { contents: contents.replace(asked, late) };
    });
  },
};

/** The lexer's library makes a table of 65 536 signs as it loads, which holds what one division says. */
const withoutSignTable: Plugin = {
  name: "without-sign-table",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]chevrotain[\\/]lib[\\/]src[\\/]scan[\\/]lexer\.js$/ }, async ({ path }) => {
      const contents = await readFile(path, "utf8");
      const [looked, made] = [
        ": charCodeToOptimizedIdxMap[charCode];",
        "charCodeToOptimizedIdxMap[i] = i > 255 ? 255 + ~~(i / 255) : i;",
      ];
      if (!contents.includes(looked) || !contents.includes(made))
        throw new Error(`${path} finds its signs in another way.`);
      const divided = contents.replace(looked, ": 255 + ~~(charCode / 255);");
      return { contents: divided.replace("if (charCodeToOptimizedIdxMap.length === 0) {", "if (false) {") };
    });
  },
};

/** Nor does the server look for packages of a person: it would load what starts processes for that. */
const withoutPackageLookup: Plugin = {
  name: "without-package-lookup",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]vscode-languageserver[\\/]lib[\\/]node[\\/]files\.js$/ }, () => ({ contents: "" }));
  },
};

/** The protocol's library has four hundred names, which a bundler makes ready for each file that asks for one: here once. */
const protocolOnce: Plugin = {
  name: "protocol-once",
  setup({ onLoad, onResolve }) {
    onResolve({ filter: /^vscode-languageserver$/ }, ({ namespace }) =>
      namespace === "once" ? undefined : { path: "vscode-languageserver", namespace: "once" },
    );
    onLoad({ filter: /.*/, namespace: "once" }, async () => ({
      contents: `export { ${(await namesOfProtocol()).join(", ")} } from "vscode-languageserver";`,
      resolveDir: root,
    }));
  },
};

/** Of the protocol's library, features that no part of the server has: notebooks, monikers and the like. */
const unusedFeatures = {
  notebook: "NotebookSyncFeature",
  typeHierarchy: "TypeHierarchyFeature",
  moniker: "MonikerFeature",
  inlineValue: "InlineValueFeature",
  linkedEditingRange: "LinkedEditingRangeFeature",
  inlineCompletion: "InlineCompletionFeature",
  textDocumentContent: "TextDocumentContentFeature",
};

/** Each adds itself to a connection, which is as it was without; the manager of documents would keep texts a second time. */
const withoutUnusedFeatures: Plugin = {
  name: "without-unused-features",
  setup({ onLoad }) {
    const left = (text: string) => ({ contents: text, loader: "js" as const });
    for (const [file, feature] of Object.entries(unusedFeatures)) {
      onLoad(
        { filter: new RegExp(`[\\\\/]vscode-languageserver[\\\\/]lib[\\\\/]common[\\\\/]${file}\\.js$`) },
        async ({ path }) => {
          const text = await readFile(path, "utf8");
          if (!text.includes(`exports.${feature} = `)) throw new Error(`${path} adds itself in another way.`);
          return left(`exports.${feature} = (connection) => connection;`);
        },
      );
      onLoad(
        {
          filter: new RegExp(
            `[\\\\/]vscode-languageserver-protocol[\\\\/]lib[\\\\/]common[\\\\/]protocol\\.${file}\\.js$`,
          ),
        },
        () => left(""),
      );
    }
    onLoad({ filter: /[\\/]vscode-languageserver[\\/]lib[\\/]common[\\/]textDocuments\.js$/ }, () => left(""));
  },
};

/** The grammar is validated by a test, and not again by each program that is started. */
const withoutValidation: Plugin = {
  name: "without-validation",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]chevrotain[\\/]lib[\\/]src[\\/]parse[\\/]grammar[\\/]checks\.js$/ }, async ({ path }) => {
      const names = [...(await readFile(path, "utf8")).matchAll(/^export function (validate\w+)/gm)];
      return { contents: names.map(([, name]) => `export const ${name} = () => [];`).join("\n"), loader: "js" };
    });
  },
};

/** What of it the server asks for, besides types. */
async function namesOfProtocol(): Promise<string[]> {
  const folder = join(root, "server/lsp");
  const texts = await Promise.all((await readdir(folder)).map((file) => readFile(join(folder, file), "utf8")));
  const asked = texts.flatMap((text) => [...text.matchAll(/^import \{([^}]*)\} from "vscode-languageserver";/gm)]);
  const names = asked.flatMap(([, list = ""]) => list.split(",").map((name) => name.trim()));
  return [...new Set(names.filter((name) => name !== "" && !name.startsWith("type ")))];
}

/** What needs a large library is a file of its own, beside the program, that is loaded when it is asked for. */
const apart: Plugin = {
  name: "apart",
  setup({ onResolve }) {
    onResolve({ filter: /(?:[\\/]papers|^\.)[\\/](?:pdf|tables)\.ts$/ }, ({ kind, path }) =>
      kind === "dynamic-import" ? { path: `../${basename(path, ".ts")}.cjs`, external: true } : undefined,
    );
  },
};

/** The typeface goes into the file that sets papers: compressed, and read when the first page is made. */
const withFonts: Plugin = {
  name: "with-fonts",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]server[\\/]papers[\\/]fonts\.ts$/ }, async () => {
      const folder = join(root, "node_modules/dejavu-fonts-ttf/ttf");
      const names = {
        plain: "DejaVuSansCondensed",
        bold: "DejaVuSansCondensed-Bold",
        slanted: "DejaVuSansCondensed-Oblique",
      };
      const entries = await Promise.all(
        Object.entries(names).map(async ([key, name]) => {
          const packed = brotliCompressSync(plainFont(await readFile(join(folder, `${name}.ttf`)))).toString("base64");
          return `${key}: () => brotliDecompressSync(Buffer.from("${packed}", "base64"))`;
        }),
      );
      packages.add("node_modules/dejavu-fonts-ttf");
      const contents = `import { brotliDecompressSync } from "node:zlib";\nexport const fontFiles = { ${entries.join(", ")} };`;
      return { contents, loader: "js" };
    });
  },
};

/** What runs in a browser: the page of the live view knows no Node and no modules. */
const inBrowser = {
  platform: "browser",
  format: "iife",
  target: "es2024",
  define: {},
  banner: {},
  jsx: "automatic",
  jsxImportSource: "preact",
} satisfies BuildOptions;

const packages = new Set<string>();

const bundles: Readonly<Record<string, Omit<BuildOptions, "metafile">>> = {
  // The editor lends its API under the name vscode; it is not a package.
  "client.cjs": { entryPoints: ["client/node.ts"], external: ["vscode"] },
  // The editor in a browser loads an extension like a module of Node, and a worker as it stands.
  "web.cjs": { ...inBrowser, format: "cjs", entryPoints: ["client/web/extension.ts"], external: ["vscode"] },
  "page.js": { ...inBrowser, entryPoints: ["client/page/editor-page.ts"] },
  "library.mjs": { ...inBrowser, format: "esm", jsx: "preserve", entryPoints: ["server/library/index.ts"] },
  "server.cjs": { entryPoints: ["server/start.node.ts"] },
  "wayfile.cjs": {
    entryPoints: ["server/start.cli.ts"],
    banner: { js: `#!/usr/bin/env node\n${ahead}` },
  },
  "pdf.cjs": {
    entryPoints: ["server/papers/pdf.ts"],
    plugins: [withFonts],
    alias: { pdfkit: join(root, "node_modules/pdfkit/js/pdfkit.js") },
  },
  "tables.cjs": { entryPoints: ["server/papers/tables.ts"] },
};

/** Asked for at once, and of most files never. */
const asked = late(root, [
  "server/cli/misuse.ts",
  "server/diagnosis/discriminate.ts",
  "server/diagnosis/evidence.ts",
  "server/diagnosis/faults.ts",
  "server/diagnosis/rank.ts",
  "server/model/argument-refusals.ts",
  "server/model/missing-arguments.ts",
  "server/model/not-accepted.ts",
  "server/model/suggestions.ts",
  "server/model/unknown-word.ts",
  "server/settings/apply.ts",
  "server/settings/read.ts",
]);

/** Programs in parts: what no first finding waits for is loaded when it is asked for. Each has a folder of its own. */
const inParts: Readonly<Record<string, Omit<BuildOptions, "metafile"> & { readonly loading?: Loading }>> = {
  "web-server": {
    ...inBrowser,
    entryPoints: { main: "client/web/worker.ts" },
    plugins: [
      withReasons,
      withoutReasons,
      withProse,
      asked,
      withoutSignTable,
      withoutLayoutOfJson,
      recordedAside,
      withoutValidation,
      withoutUnusedFeatures,
      protocolOnce,
    ],
    loading: inWorker,
  },
  server: {
    entryPoints: { main: "server/main.node.ts" },
    plugins: [
      withReasons,
      withoutReasons,
      withProse,
      asked,
      withoutSignTable,
      withoutLayoutOfJson,
      recordedAside,
      withoutValidation,
      withoutCryptography,
      withoutPackageLookup,
      withoutUnusedFeatures,
      protocolOnce,
      apart,
    ],
  },
  wayfile: {
    entryPoints: { main: "server/main.cli.ts" },
    plugins: [
      withSamples,
      withReasons,
      withoutReasons,
      withProse,
      asked,
      withoutSignTable,
      withoutLayoutOfJson,
      recordedAside,
      withoutValidation,
      withVersion,
      apart,
    ],
  },
};

function notePackages({ inputs }: Metafile): void {
  for (const input of Object.keys(inputs)) {
    const folder = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
    if (folder) packages.add(folder);
  }
}

await rm(dist, { recursive: true, force: true });
/** What tells each program from any other build of it: its first file has the names of its parts, which follow from them. */
const contents: Record<string, string> = {};
for (const [name, { loading, ...options }] of Object.entries(inParts)) {
  const made = await buildInParts({ ...shared, banner: { js: ahead }, ...options }, join(dist, name), loading);
  if (made.warnings > 0) process.exitCode = 1;
  notePackages(made.metafile);
  contents[name] = hash("sha256", made.first, "hex").slice(0, 16);
  console.log(`${name.padEnd(16)} ${Math.ceil(made.atOnce / 1000)} kB at once of ${Math.ceil(made.all / 1000)} kB`);
}
const started = {
  contentOfServer: JSON.stringify(contents.server),
  contentOfWayfile: JSON.stringify(contents.wayfile),
};
const sizes = await Promise.all(
  Object.entries(bundles).map(async ([name, options]) => {
    const outfile = join(dist, name);
    const define = { ...(options.define ?? shared.define), ...started };
    const { metafile, warnings } = await build({ ...shared, banner: { js: ahead }, ...options, define, outfile });
    if (warnings.length > 0) process.exitCode = 1;
    notePackages(metafile);
    if (name === "wayfile.cjs") await chmod(outfile, 0o755);
    const bytes = Object.values(metafile.outputs)[0]?.bytes ?? 0;
    return `${name.padEnd(16)} ${Math.ceil(bytes / 1000)} kB`;
  }),
);
await writeFile(join(dist, "page.css"), await styleOfPage());
await writeFile(join(dist, "library.d.mts"), await libraryTypes());
await writeFile(join(dist, "wayfile.html"), await pageAlone());
await writeFile(join(dist, "third-party.txt"), (await Promise.all([...packages].sort().map(licenceOf))).join("\n\n"));
// The pages of the checks, samples and all: the extension reads them when one is opened.
const checks = pages.map((page) => [page.id, { title: page.title, page: checkPageMarkdown(page).text }]);
await writeFile(join(dist, "checks.json"), JSON.stringify(Object.fromEntries(checks)));
await writeFile(join(dist, "settings.schema.json"), JSON.stringify(settingsSchema()));
console.log(sizes.join("\n"));

/**
 * One page that checks a schedule without an editor: script, style and the server that runs in its worker are all in it,
 * and its policy lets it fetch nothing.
 */
async function pageAlone(): Promise<string> {
  // Nothing can be fetched here: the server is one script.
  const worker = await build({
    ...shared,
    ...inBrowser,
    entryPoints: ["client/web/worker.ts"],
    plugins: [withoutSamples],
    write: false,
  });
  const { outputFiles } = await build({
    ...shared,
    ...inBrowser,
    entryPoints: ["client/page/alone.tsx"],
    write: false,
    define: {
      workerSource: JSON.stringify(worker.outputFiles?.[0]?.text),
      sampleText: JSON.stringify(await readFile(join(root, "tests/build/sample.ways"), "utf8")),
    },
  });
  const script = outputFiles?.[0]?.text.replaceAll("</script", "<\\/script") ?? "";
  const policy =
    "default-src 'none'; script-src 'unsafe-inline' blob:; worker-src blob:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";
  return `<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Wayfile: check a schedule</title>
<style>${await styleOfPage()}</style>
</head>
<body>
<div id="app"></div>
<script>${script}</script>
</body>
</html>
`;
}

async function styleOfPage(): Promise<string> {
  const { code } = await transform(await readFile(join(root, "client/page/page.css"), "utf8"), {
    loader: "css",
    minify: true,
  });
  return code;
}

/** The library's face as one file of declarations: its types are complete in a file of their own. */
async function libraryTypes(): Promise<string> {
  const types = await readFile(join(root, "server/library/types.ts"), "utf8");
  const index = await readFile(join(root, "server/library/index.ts"), "utf8");
  const given = /^type Given = .*;$/m.exec(index)?.[0] ?? "";
  const functions = [...index.matchAll(/^(\/\*\*[^\n]*\*\/)\nexport function (\w+\([^\n]*\): \w+(?:\[\])?) \{$/gm)];
  const faces = functions.map(
    ([, comment = "", face = ""]) =>
      `${comment}\nexport declare function ${face.replace(/(\w+): (\w+) = \{\}/, "$1?: $2")};`,
  );
  return [types, given, ...faces, ""].join("\n");
}

/** The name, version and licence text of a package whose code is in a bundle, as its licence asks for. */
async function licenceOf(folder: string): Promise<string> {
  const path = join(root, folder);
  const { name, version, license } = JSON.parse(await readFile(join(path, "package.json"), "utf8"));
  const file = (await readdir(path)).find((entry) => /^licen[cs]e/i.test(entry));
  const text = file ? await readFile(join(path, file), "utf8") : "";
  return `${name} ${version} (${license})\n\n${text.trim()}\n`;
}
