/**
 * Puts the results of schedules together, file by file. A file that one schedule alone reads is done with it; one that
 * several read is done with the last of them, and its findings are joined as an editor joins them.
 */
import { departureUnused } from "../rules/frame/departure-checks.ts";
import { namedIn } from "../workspace/join-findings.ts";
import type { FileResult, ResultFinding, ScheduleResult, Suppressed } from "./result.ts";
import { inTheirFile } from "./schedule.ts";

/** What the files of a run are part of. */
export interface Membership {
  /** How many schedules read the file. */
  schedulesOf(path: string): number;
  /** The place of a schedule among all: which of them a message names first. */
  orderOf(root: string): number;
}

interface Joined {
  readonly finding: ResultFinding;
  /** The schedules that have it. */
  readonly found: { readonly name: string; readonly order: number }[];
}

interface Pending {
  readonly result: FileResult;
  readonly all: number;
  left: number;
  readonly findings: Map<string, Joined>;
}

interface JoinedSchedule {
  /** Files of which all is known now. */
  readonly files: readonly FileResult[];
  /** What this schedule suppresses and none before it did. */
  readonly suppressed: readonly Suppressed[];
}

export class Joiner {
  readonly #members: Membership;
  readonly #pending = new Map<string, Pending>();
  /** Of files that several schedules read, what was suppressed. */
  readonly #suppressed = new Set<string>();

  constructor(members: Membership) {
    this.#members = members;
  }

  add(schedule: ScheduleResult): JoinedSchedule {
    return {
      files: schedule.files.flatMap((file) => this.#addFile(file, schedule) ?? []),
      suppressed: schedule.suppressed.filter((one) => this.#isNew(one)),
    };
  }

  /** What is known of files that not all of their schedules were checked for. */
  rest(): readonly FileResult[] {
    const rest = [...this.#pending.values()].map((pending) =>
      finished({ ...pending, all: pending.all - pending.left }),
    );
    this.#pending.clear();
    return rest;
  }

  #addFile(file: FileResult, schedule: ScheduleResult): FileResult | undefined {
    const all = this.#members.schedulesOf(file.path);
    if (all <= 1) return file;
    const pending = this.#pending.get(file.path) ?? { result: file, all, left: all, findings: new Map() };
    this.#pending.set(file.path, pending);
    pending.left--;
    const found = { name: schedule.name, order: this.#members.orderOf(schedule.root) };
    for (const finding of file.findings) {
      const before = pending.findings.get(keyOf(finding));
      if (!before) pending.findings.set(keyOf(finding), { finding, found: [found] });
      else if (before.found.at(-1) !== found) before.found.push(found);
    }
    if (pending.left > 0) return undefined;
    this.#pending.delete(file.path);
    return finished(pending);
  }

  #isNew({ finding }: Suppressed): boolean {
    if (this.#members.schedulesOf(finding.at.path) <= 1) return true;
    const key = `${finding.at.path}\0${keyOf(finding)}`;
    return !this.#suppressed.has(key) && this.#suppressed.add(key) !== undefined;
  }
}

function finished({ result, all, findings }: Pending): FileResult {
  const joined = [...findings.values()].flatMap((one) => joinedFinding(one, all));
  return { ...result, findings: joined.sort(inTheirFile) };
}

/** One that not every schedule has names those that have it. A departure is of no use only where no schedule needs it. */
function joinedFinding({ finding, found }: Joined, all: number): readonly ResultFinding[] {
  if (found.length === all) return [finding];
  if (finding.check === departureUnused) return [];
  const names = found.sort((a, b) => a.order - b.order).map(({ name }) => name);
  return [{ ...finding, message: namedIn(finding.message, names) }];
}

/** What makes two findings of one file the same to a reader. */
const keyOf = ({ check, severity, message, at }: ResultFinding): string =>
  `${at.offset} ${at.endOffset} ${check} ${severity} ${message}`;
