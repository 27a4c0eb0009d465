/** Only what another file imports is exported: so a reader sees what a file is for, and what is dead shows. */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";

interface Source {
  readonly file: string;
  readonly text: string;
}

const root = path.dirname(import.meta.dirname);
/** A script whose name an editor's own program has. */
const launcher = "tests/editor/launcher/bin/code";
const sources = globSync(["{grammar,server,client,tests}/**/*.{ts,tsx,mjs}", launcher, "*.ts"], { cwd: root })
  .map((file) => file.replaceAll("\\", "/"))
  .filter((file) => !file.includes("node_modules/"))
  .map((file): Source => ({ file, text: readFileSync(path.join(root, file), "utf8") }));

/** What an editor, a browser or a program that uses the library imports. */
const entries = ["client/node.ts", "client/web/extension.ts", "server/library/index.ts", "server/library/types.ts"];

const kept = [
  // Whoever has the standard itself marks rows with it: no value has been read there yet.
  "server/tables/table.ts#printed",
  // Stands in the place of the memo where mutants are tried.
  "tests/mutants/forgetful.ts#Memo",
];

const exported = /^export (?:async )?(?:const|let|function\*?|(?:abstract )?class|interface|type|enum) (\w+)/gm;
const lists = /^(?:import|export) (?:type )?\{([^}]*)\} from "(\.[^"]+)"/gm;
const handedOn = /^export \* from "(\.[^"]+)"/gm;
/** Loaded on demand, or as one object: any of it may be used. */
const asAWhole = /(?:\bimport\(|\* as \w+ from )"(\.[^"]+)"/g;

const near = (file: string, name: string): string => path.posix.join(path.posix.dirname(file), name);

/** `file#name` of everything that is exported and imported nowhere. */
function unimportedAmong(all: readonly Source[]): string[] {
  const behind = new Map(
    all.map(({ file, text }) => [file, [...text.matchAll(handedOn)].map(([, to = ""]) => near(file, to))]),
  );
  const imported = new Set<string>();
  for (const { file, text } of all) {
    for (const [, names = "", from = ""] of text.matchAll(lists)) {
      const source = near(file, from);
      for (const name of names.split(",").map((one) => one.trim().replace(/^type | as .*/g, "")))
        for (const owner of [source, ...(behind.get(source) ?? [])]) imported.add(`${owner}#${name}`);
    }
    for (const [, from = ""] of text.matchAll(asAWhole)) imported.add(`${near(file, from)}#*`);
  }
  return all.flatMap(({ file, text }) =>
    imported.has(`${file}#*`)
      ? []
      : [...text.matchAll(exported)].map(([, name]) => `${file}#${name}`).filter((one) => !imported.has(one)),
  );
}

test("nothing is exported that no other file imports", () => {
  const unimported = unimportedAmong(sources).filter((one) => !entries.includes(one.replace(/#.*/, "")));
  expect(unimported.sort()).toEqual(kept);
});

/** Of scripts, whose imports no compiler follows. */
test("what a script imports from another is exported there", () => {
  const named = (file: string): string[] =>
    [...(sources.find((one) => one.file === file)?.text ?? "").matchAll(exported)].map(([, name = ""]) => name);
  const scripts = sources.filter(({ file }) => file.endsWith(".mjs") || file === launcher);
  const imports = scripts.flatMap(({ file, text }) =>
    [...text.matchAll(lists)].flatMap(([, names = "", from = ""]) =>
      names.split(",").map((name) => [near(file, from), name.trim().replace(/ as .*/, "")] as const),
    ),
  );
  expect(imports.length).toBeGreaterThan(10);
  expect(imports.filter(([from, name]) => !named(from).includes(name))).toEqual([]);
});

test("an export that is imported under another name, or handed on, counts as imported", () => {
  const example = [
    { file: "a.ts", text: "export const used = 1;\nexport type Unused = 2;" },
    { file: "all.ts", text: 'export * from "./a.ts";' },
    { file: "b.ts", text: 'import { used as one } from "./all.ts";' },
  ];
  expect(unimportedAmong(example)).toEqual(["a.ts#Unused"]);
});
