import { createTwoFilesPatch } from "diff";

/** What changes in a file, as a patch that `git apply` and `patch -p1` take. `path`: as it is shown. */
export const patchOf = (path: string, before: string, after: string): string =>
  createTwoFilesPatch(`a/${path}`, `b/${path}`, before, after, "", "", { context: 3 }).replace(/^=+\n/, "");
