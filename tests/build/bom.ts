/**
 * The bill of materials of what runs: `npm run bom` writes `.build/bom.cdx.json` (CycloneDX, by npm itself), holds every
 * licence to those that let the whole be given away, and asks the registry for known weaknesses. Where that does not
 * answer, this is said and nothing fails.
 */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";

interface Component {
  readonly name: string;
  readonly version: string;
  readonly licenses?: readonly { readonly license?: { readonly id?: string }; readonly expression?: string }[];
}

const root = join(import.meta.dirname, "../..");
const free =
  /^(?:MIT|ISC|Apache-2\.0|BSD-[23]-Clause|BlueOak-1\.0\.0|0BSD|Bitstream-Vera|\((?:MIT|[\w.-]+ OR MIT|MIT OR [\w.-]+)\))$/;

/** Packages whose manifest names no licence: read in the file they carry. */
const readByHand: Readonly<Record<string, string>> = { "dejavu-fonts-ttf": "Bitstream-Vera", "png-js": "MIT" };

const npm = (...args: string[]) => spawnSync("npm", args, { cwd: root, encoding: "utf8", maxBuffer: 1 << 28 });

/** What a package says of its licence: to npm, or in its own manifest. */
function licenceOf({ name, licenses = [] }: Component): string {
  const [first] = licenses;
  const said = first?.license?.id ?? first?.expression;
  if (said !== undefined) return said;
  if (name in readByHand) return readByHand[name] ?? "none";
  const manifest = JSON.parse(readFileSync(join(root, "node_modules", name, "package.json"), "utf8"));
  return typeof manifest.license === "string" ? manifest.license : (manifest.license?.type ?? "none");
}

function bill(): boolean {
  const { stdout, status } = npm("sbom", "--sbom-format", "cyclonedx", "--omit", "dev");
  if (status !== 0) {
    console.log("The bill of materials could not be made.");
    return false;
  }
  mkdirSync(join(root, ".build"), { recursive: true });
  writeFileSync(join(root, ".build/bom.cdx.json"), stdout);
  const components: readonly Component[] = JSON.parse(stdout).components;
  const licences = components.map((one) => [`${one.name} ${one.version}`, licenceOf(one)] as const);
  for (const licence of new Set(licences.map(([, one]) => one))) {
    const names = licences.filter(([, one]) => one === licence).map(([name]) => name);
    console.log(`${licence}: ${names.join(", ")}`);
  }
  const others = licences.filter(([, licence]) => !free.test(licence));
  for (const [name, licence] of others) console.log(`NOT AMONG THE FREE ONES: ${name} (${licence})`);
  console.log(`${components.length} packages run`);
  return components.length > 0 && others.length === 0;
}

function audit(): boolean {
  const { stdout } = npm("audit", "--omit", "dev", "--json");
  const counts = answerIn(stdout);
  if (counts === undefined) {
    console.log("The registry did not say what weaknesses are known: not shown to be none.");
    return true;
  }
  console.log(`Known weaknesses: ${JSON.stringify(counts)}`);
  return (counts.total ?? 0) === 0;
}

function answerIn(text: string): Readonly<Record<string, number>> | undefined {
  try {
    return JSON.parse(text).metadata?.vulnerabilities;
  } catch {
    return undefined;
  }
}

const isWhole = bill();
process.exitCode = audit() && isWhole ? 0 : 1;
