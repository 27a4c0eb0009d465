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
    nameOf: (path) => nameBelow(top, path),
    pathOf: (name) => join(top, name),
    shown: (name) => {
      if (own === "" && !name.startsWith("..")) return name;
      return name.startsWith(own) && own !== "" ? name.slice(own.length) : slashes(relative(cwd, join(top, name)));
    },
  };
}

/** Nearly every path lies below the top as it is written, and need not be taken apart. */
function nameBelow(top: string, path: string): string {
  const isBelow = path.startsWith(top) && path[top.length] === sep && path.length > top.length + 1;
  return isBelow && !path.includes("..") ? slashes(path.slice(top.length + 1)) : slashes(relative(top, path)) || ".";
}

const slashes = (path: string): string => (sep === "/" ? path : path.replaceAll(sep, "/"));
