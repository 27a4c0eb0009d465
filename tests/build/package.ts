/**
 * Packs the extension: `node tests/build/package.ts`, or `npm run package`, after a build.
 *
 * An editor looks for the translations of a manifest in the extension's own folder. There the strings of package.json
 * become keys, with the English beside them, so that package.json itself stays readable.
 */
import { cpSync, globSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { createVSIX } from "@vscode/vsce";
import { translatable } from "./manifest.ts";

const root = join(import.meta.dirname, "../..");
const stage = join(root, ".build/extension");

rmSync(stage, { recursive: true, force: true });
const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
for (const file of globSync(manifest.files as string[], { cwd: root })) {
  mkdirSync(dirname(join(stage, file)), { recursive: true });
  cpSync(join(root, file), join(stage, file));
}

const { keyed, english } = translatable(manifest);
// What is for those who change the program stays behind, and with it the list of files: what stands here is packed.
write("package.json", { ...keyed, files: undefined, scripts: undefined, devDependencies: undefined });
write("package.nls.json", english);
for (const file of globSync("client/l10n/manifest.*.json", { cwd: root })) {
  const language = file.split(".").at(-2);
  const words: Record<string, string> = JSON.parse(readFileSync(join(root, file), "utf8"));
  const known = Object.entries(english).flatMap(([key, text]) => (text in words ? [[key, words[text]]] : []));
  write(`package.nls.${language}.json`, Object.fromEntries(known));
}
await createVSIX({
  cwd: stage,
  packagePath: join(root, ".build/wayfile.vsix"),
  dependencies: false,
  allowMissingRepository: true,
  rewriteRelativeLinks: false,
});

function write(name: string, content: unknown): void {
  writeFileSync(join(stage, name), `${JSON.stringify(content, null, 2)}\n`);
}
