import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import type { Text } from "../text/decode.ts";
import { readBeside } from "./read-now.ts";

export interface FoundSettings {
  readonly path: string;
  readonly read: Text;
}

/** The nearest file of a name from a folder upwards, as far as the top of its repository; else `last` and not beyond. */
export function nearestAbove(folder: string, name: string, last: string | undefined): FoundSettings | undefined {
  const passed: string[] = [];
  for (let at = folder; ; at = dirname(at)) {
    passed.push(at);
    const isTop = existsSync(join(at, ".git"));
    if (isTop || dirname(at) === at) {
      // Without a repository nothing above the folders that were asked for is looked at.
      const end = isTop ? passed.length : Math.max(1, passed.indexOf(last ?? folder) + 1);
      const path = passed
        .slice(0, end)
        .map((one) => join(one, name))
        .find((one) => existsSync(one));
      return path === undefined ? undefined : { path, read: readBeside(path) };
    }
  }
}
