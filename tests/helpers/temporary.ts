import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Every test writes below one folder, which goes when the last one ends: a run leaves nothing behind. */
export default function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), "wayfile-tests-"));
  process.env.TMPDIR = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
