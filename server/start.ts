/**
 * What is loaded before the program itself. V8 compiles a function when it is first called; what it has compiled by the
 * time a first schedule is checked is kept from one start to the next, which takes a third off a start. It lies in a
 * folder that is the person's own: one that others can write to would be a way in.
 */
import { subscribe } from "node:diagnostics_channel";
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import module, { createRequire } from "node:module";
import { dirname, isAbsolute, join } from "node:path";
import { Script } from "node:vm";
import { crc32 } from "node:zlib";
import { checkedChannel } from "./checked.ts";
import { folderOfCaches } from "./cli/cache-folder.ts";

/** ms after the first schedule was checked: by then nobody waits for an answer, and most of what runs has run. */
const settled = 2_000;

/**
 * `program` is a file by its place from this one, `content` what tells what is in it from anything else. `keeps`: whether
 * this is the one that keeps what is compiled, where several of them start.
 */
export function startWithCompiled(program: string, content: string, keeps: boolean): void {
  // On an older Node some checks would fall over one by one, and the rest would look like a result.
  if (Number.parseInt(process.versions.node, 10) < 22) {
    process.stderr.write(`Wayfile needs Node 22.12 or newer; this is ${process.versions.node}.\n`);
    process.exitCode = 2;
    return;
  }
  const folder = folderOfCaches(process.env);
  const place = isAbsolute(folder) && !process.env.NODE_DISABLE_COMPILE_CACHE ? join(folder, "compiled") : undefined;
  // Parts that are loaded later are kept by Node itself, as far as they are compiled when they are loaded.
  if (place !== undefined) module.enableCompileCache?.(place);
  const file = join(import.meta.dirname, program);
  const kept = place === undefined ? undefined : join(place, `${content}-${process.arch}-${process.versions.v8}`);
  const before = kept === undefined ? undefined : readKept(kept);
  // It holds no sign beyond ASCII, so that it need not be decoded.
  const script = new Script(module.wrap(readFileSync(file, "latin1")), {
    filename: file,
    ...(before ? { cachedData: before } : {}),
  });
  if (keeps && kept !== undefined && (!before || script.cachedDataRejected)) keepOnceChecked(script, kept);
  run(script, file);
}

/** As `require` would run it, so that its parts find it there. */
function run(script: Script, file: string): void {
  const requireThere = createRequire(file);
  const own = new module(file);
  Object.assign(own, { filename: file, loaded: true });
  requireThere.cache[file] = own;
  script.runInThisContext()(own.exports, requireThere, own, file, dirname(file));
}

/** Kept with its sum: what is damaged would bring the program down. */
function readKept(path: string): Buffer | undefined {
  try {
    const bytes = readFileSync(path);
    const body = bytes.subarray(4);
    return bytes.readUInt32LE(0) === crc32(body) ? body : undefined;
  } catch {
    return undefined;
  }
}

function keepOnceChecked(script: Script, path: string): void {
  let isKept = false;
  const keep = (): void => {
    if (isKept) return;
    isKept = true;
    write(path, script.createCachedData());
  };
  let isChecked = false;
  subscribe(checkedChannel, () => {
    if (isChecked) return;
    isChecked = true;
    setTimeout(keep, settled).unref();
    process.on("exit", keep);
  });
}

/** In one step, so that two starts at once leave whole files. What cannot be kept is done without. */
function write(path: string, body: Buffer): void {
  const beside = `${path}.${process.pid}.tmp`;
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    const sum = Buffer.alloc(4);
    sum.writeUInt32LE(crc32(body));
    writeFileSync(beside, Buffer.concat([sum, body]), { mode: 0o600 });
    renameSync(beside, path);
  } catch {
    rmSync(beside, { force: true });
  }
}
