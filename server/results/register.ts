/** The installations of a schedule as a register lists them. */
import type { Installation } from "../model/installation.ts";
import { countsOf, type FoundCounts, type RegisterRow, registerRow } from "../reports/register/row.ts";
import { isMissingTest } from "../rules/common/missing-tests.ts";
import type { CheckResult } from "../rules/frame/departures.ts";
import type { Finding } from "../rules/frame/rule.ts";
import type { Project, ProjectResult } from "../workspace/project.ts";
import type { ScheduleResult } from "./result.ts";

export const registerOfProject = ({ installations, result }: Project): RegisterRow[] =>
  installations.map((one) => registerRow(one, countsOf(ofInstallation(one, result))));

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

/** What is found in one of several installations, and in the lines that all of them share. */
function ofInstallation(installation: Installation, { files, suppressed, installations }: ProjectResult): CheckResult {
  const findings = files.flatMap((file) => file.findings);
  if (installations.length === 1) return { findings, suppressed };
  const others = new Set(
    installations
      .filter((one) => one !== installation)
      .flatMap(({ head, boards }) => [head.header.segment, ...boards.flatMap(({ board }) => board.segments)]),
  );
  const isOwn = ({ spot }: Finding): boolean => !others.has(spot.segment);
  return { findings: findings.filter(isOwn), suppressed: suppressed.filter(({ finding }) => isOwn(finding)) };
}
