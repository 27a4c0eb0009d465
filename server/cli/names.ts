/**
 * What results call a file: its path from the top of the repository, or from the current folder where there is none, so
 * that a result means the same from another folder and on another computer.
 */
import { join, relative, sep } from "node:path";
import { topOfRepository } from "../disk/grounds.ts";

export interface Names {
  readonly nameOf: (path: string) => string;
  /** The path that a name stands for. */
  readonly pathOf: (name: string) => string;
  /** A name as it is shown: as a path from the current folder. */
  readonly shown: (name: string) => string;
}

export function namesFrom(cwd: string): Names {
  const top = topOfRepository(cwd);
  const inner = slashes(relative(top, cwd));
  const own = inner === "" ? "" : `${inner}/`;
  return {
    nameOf: (path) => slashes(relative(top, path)) || ".",
    pathOf: (name) => join(top, name),
    shown: (name) => {
      if (own === "" && !name.startsWith("..")) return name;
      return name.startsWith(own) && own !== "" ? name.slice(own.length) : slashes(relative(cwd, join(top, name)));
    },
  };
}

const slashes = (path: string): string => (sep === "/" ? path : path.replaceAll(sep, "/"));
