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
 * ms after a first part of a large schedule was shown: V8 keeps with a function how often it ran, and a start that went by
 * what a thousand ways had taught compiled for two on the other core instead of getting on.
 */
const sent = 10;

/** How many starts add what they have compiled: the first schedule may be an empty one, which most checks never see. */
const mostTimes = 4;

/** Of four bytes a sum, and of one how many starts have added to what follows. */
const headLength = 5;

interface Kept {
  readonly times: number;
  readonly body: Buffer;
}

/**
 * `program` is a file by its place from this one, `content` what distinguishes its content from any other. `keeps`: whether
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
  const kept =
    place === undefined ? undefined : join(place, `${content}-${process.arch}-${process.versions.v8}${flags()}`);
  const before = kept === undefined ? undefined : readKept(kept);
  // It holds no sign beyond ASCII, so that it need not be decoded.
  const script = new Script(module.wrap(readFileSync(file, "latin1")), {
    filename: file,
    ...(before ? { cachedData: before.body } : {}),
  });
  const times = before && !script.cachedDataRejected ? before.times : 0;
  if (keeps && kept !== undefined && times < mostTimes) keepOnceChecked(script, kept, times + 1);
  run(script, file);
}

/** V8 takes nothing of what it compiled under other flags: of two editors that share a folder each would undo the other's. */
function flags(): string {
  const given = process.execArgv.filter((flag) => !flag.startsWith("--inspect")).join(" ");
  return given === "" ? "" : `-${crc32(given).toString(16)}`;
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
function readKept(path: string): Kept | undefined {
  try {
    const bytes = readFileSync(path);
    if (bytes.readUInt32LE(0) !== crc32(bytes.subarray(4))) return undefined;
    return { times: bytes.readUInt8(4), body: bytes.subarray(headLength) };
  } catch {
    return undefined;
  }
}

function keepOnceChecked(script: Script, path: string, times: number): void {
  let isKept = false;
  const keep = (): void => {
    if (isKept) return;
    isKept = true;
    write(path, { times, body: script.createCachedData() });
  };
  let isChecked = false;
  subscribe(checkedChannel, (goesOn) => {
    if (isChecked) return;
    isChecked = true;
    setTimeout(keep, goesOn === true ? sent : settled).unref();
    process.on("exit", keep);
  });
}

/** In one step, so that two starts at once leave whole files. What cannot be kept is done without. */
function write(path: string, { times, body }: Kept): void {
  const beside = `${path}.${process.pid}.tmp`;
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    const bytes = Buffer.concat([Buffer.alloc(headLength), body]);
    bytes.writeUInt8(times, 4);
    bytes.writeUInt32LE(crc32(bytes.subarray(4)));
    writeFileSync(beside, bytes, { mode: 0o600 });
    renameSync(beside, path);
  } catch {
    remove(beside);
  }
}

/** Where the folder of caches is a file, or closed to us, taking away fails as writing did. */
function remove(path: string): void {
  try {
    rmSync(path, { force: true });
  } catch {
    // A start that keeps nothing is only slower.
  }
}
