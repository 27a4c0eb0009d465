import { none } from "../reports/common/target.ts";
import { editionsReport } from "../reports/editions/report.ts";
import { together } from "../reports/setting/document.ts";
import { editionOf, editions as known } from "../tables/editions.ts";
import { type Setting, writeReport } from "./reporting.ts";
import type { Terminal } from "./terminal.ts";

export interface EditionsOptions {
  readonly to?: string;
  readonly format: Setting;
}

/** `wayfile editions`: what would be found under the other editions, or under one. */
export function editions(path: string, { to, format }: EditionsOptions, terminal: Terminal): number {
  return writeReport(path, format, terminal, (installations) => {
    const wanted = to === undefined ? undefined : editionOf(to);
    if (to !== undefined && !wanted)
      return { failure: `“${to}” is not an edition known here. Known are ${known.map(({ id }) => id).join(", ")}.` };
    return together(installations.map((installation) => editionsReport(installation, wanted))) ?? none;
  });
}
