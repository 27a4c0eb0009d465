/** The installations of a schedule as a register lists them. */
import { sharesOf } from "../reports/common/shares.ts";
import { countsOf, type FoundCounts, type RegisterRow, registerRow } from "../reports/register/row.ts";
import { isMissingTest } from "../rules/common/missing-tests.ts";
import type { Project } from "../workspace/project.ts";
import type { ScheduleResult } from "./result.ts";

export function registerOfProject({ installations, result: { files, suppressed } }: Project): RegisterRow[] {
  const findings = files.flatMap((file) => file.findings);
  const shares = sharesOf(installations, { findings, suppressed });
  return shares.map(({ installation, result }) => registerRow(installation, countsOf(result)));
}

/**
 * The same where it is known already what is found, so that nothing is checked again. Nothing where there are several
 * installations: a result does not say whose a finding is.
 */
export function registerOfResult({ installations }: Project, found: ScheduleResult): RegisterRow[] | undefined {
  const [only, ...others] = installations;
  if (others.length > 0) return undefined;
  return only ? [registerRow(only, countsIn(found))] : [];
}

function countsIn({ files, suppressed }: ScheduleResult): FoundCounts {
  const all = files.flatMap((file) => [...file.findings.map((one) => ({ ...one, count: 1 })), ...file.more]);
  const sum = (wanted: (one: (typeof all)[number]) => boolean): number =>
    all.reduce((total, one) => total + (wanted(one) ? one.count : 0), 0);
  return {
    errors: sum(({ severity }) => severity === "error"),
    warnings: sum(({ severity }) => severity === "warning"),
    missing: sum(isMissingTest),
    departures: new Set(suppressed.map(({ by }) => by && `${by.path}\0${by.offset}`)).size,
  };
}
