/**
 * Loaded before the program (`--require`): something happens at one step of its work with files, and no clock decides
 * when. `MEDDLE` says what: `{ "kill": 3, "under": FOLDER }` ends the process without a word at the third thing it does to
 * a file below the folder, half of what was to be written being there; `{ "at": 2, "path": FILE, "into": KIND }` makes
 * something else of a file just before it is opened for the second time.
 */
const fs = require("node:fs");
const { execFileSync } = require("node:child_process");

const { kill, under, at, path, into } = JSON.parse(process.env.MEDDLE);
let steps = 0;

function die() {
  process.kill(process.pid, "SIGKILL");
}

const halfOf = (content) => content.slice(0, content.length / 2);

if (kill !== undefined) {
  const opened = new Map();
  const isMine = (target) => String(opened.get(target) ?? target).startsWith(under);
  const before = (name, half) => {
    const real = fs[name];
    fs[name] = (target, ...rest) => {
      const mine = isMine(target) || (name === "renameSync" && isMine(rest[0]));
      if (mine && ++steps === kill) {
        if (half) real(target, halfOf(rest[0]), ...(typeof target === "string" ? rest.slice(1) : []));
        die();
      }
      return real(target, ...rest);
    };
  };
  const { openSync } = fs;
  fs.openSync = (target, flags, ...rest) => {
    const handle = openSync(target, flags, ...rest);
    if (typeof flags === "string" && flags.includes("w")) opened.set(handle, target);
    return handle;
  };
  before("writeFileSync", true);
  before("writeSync", true);
  before("renameSync", false);
  before("chmodSync", false);
}

if (at !== undefined) {
  const { openSync } = fs;
  fs.openSync = (target, ...rest) => {
    if (target === path && ++steps === at) {
      fs.rmSync(path, { recursive: true });
      if (into === "folder") fs.mkdirSync(path);
      else if (into === "pipe") execFileSync("mkfifo", [path]);
      else if (into === "link") fs.symlinkSync("/etc/hostname", path);
      else if (into !== "nothing") fs.writeFileSync(path, into);
    }
    return openSync(target, ...rest);
  };
}
