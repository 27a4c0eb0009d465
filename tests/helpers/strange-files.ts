/** A folder with what a `use` must not open, and what each is refused for. */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const outside = "it lies outside the folder of this schedule. Work from a folder that holds both.";
const badName = "its name does not end in “.ways”.";
const linkOut = "it is a link out of the folder of this schedule. Name the file itself, or copy it here.";

/** What a `use` says, with the reason it is given. `project` is the folder of the schedule. */
export const refusals: readonly (readonly [use: string, reason: string])[] = [
  ["pipe.ways", "it is not a regular file."],
  ["folder.ways", "it is a folder."],
  ["/dev/zero", badName],
  ["/etc/passwd", badName],
  ["../secret/.env", badName],
  ["../secret/other.ways", outside],
  ["../secret/gone.ways", outside],
  ["../project-2/other.ways", outside],
  ["../../../../../../../../etc/other.ways", outside],
  ["/etc/other.ways", outside],
  ["\\\\host\\share\\other.ways", outside],
  ["//host/share/other.ways", outside],
  ["out.ways", linkOut],
  ["linked/other.ways", linkOut],
  ["zero.ways", "it is a link to a file whose name does not end in “.ways”."],
  ["huge.ways", "it is larger than 8 MB (9.0 MB), the most that is read of one file."],
  ["latin.ways", "it is not UTF-8 text: the first bad byte (E9) stands at line 1, column 6."],
  ["gone.ways", "there is no such file."],
];

/** What a `use` says, and is read. */
export const welcome = ["meters.ways", "./inner/../meters.ways", "inner\\meters.ways", "within.ways"];

const meters = "wayfile 1\n";

interface StrangeFolder {
  readonly path: string;
  remove(): void;
}

export function strangeFolder(): StrangeFolder {
  const top = realpathSync(mkdtempSync(join(tmpdir(), "wayfile-")));
  const path = join(top, "project");
  for (const folder of ["project", "project/inner", "project/folder.ways", "project-2", "secret"]) {
    mkdirSync(join(top, folder));
  }
  writeFileSync(join(top, "secret/.env"), "KEY=secret\n");
  for (const other of ["secret", "project-2"]) writeFileSync(join(top, other, "other.ways"), "hidden line\n");
  writeFileSync(join(path, "meters.ways"), meters);
  writeFileSync(join(path, "inner/meters.ways"), meters);
  writeFileSync(join(path, "latin.ways"), Buffer.from("# caf\xe9\n", "latin1"));
  writeFileSync(join(path, "huge.ways"), Buffer.alloc(9_000_000, "# \n"));
  execFileSync("mkfifo", [join(path, "pipe.ways")]);
  symlinkSync("../secret/other.ways", join(path, "out.ways"));
  symlinkSync("../secret", join(path, "linked"));
  symlinkSync("/dev/zero", join(path, "zero.ways"));
  symlinkSync("inner/meters.ways", join(path, "within.ways"));
  return { path, remove: () => rmSync(top, { recursive: true, force: true }) };
}

/** A schedule that uses a file, whatever signs its path holds. */
export const using = (path: string): string => `wayfile 1\nuse "${path.replaceAll("\\", "\\\\")}"\n`;
