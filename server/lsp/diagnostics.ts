/** Findings as the protocol wants them: one builder behind both ways of delivering them. */

import { type Diagnostic, type DiagnosticRelatedInformation, DiagnosticSeverity } from "vscode-languageserver";
import { folded } from "../features/cards/card.ts";
import { firstOfEach } from "../rules/frame/first-of-each.ts";
import type { Finding, Severity } from "../rules/frame/rule.ts";
import type { FatesOf } from "../settings/apply.ts";
import { settingsFile } from "../settings/settings.ts";
import type { Snapshot, Workspace } from "../workspace/workspace.ts";
import { editOf, locationOf, rangeOf } from "./convert.ts";
import type { HouseSettings } from "./house.ts";

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
};

/** The diagnostics of a file, and a name for them that changes when they do. */
export interface DiagnosticSet {
  readonly id: string;
  readonly items: readonly Diagnostic[];
}

interface Kept {
  readonly places: string;
  readonly diagnostic: Diagnostic;
}

export class Diagnostics {
  readonly #workspace: Workspace;
  readonly #last = new Map<string, DiagnosticSet>();
  /** What is sent of a finding, kept while neither it nor the lines it speaks of have moved. */
  readonly #kept = new WeakMap<Finding, Kept>();
  #sets = 0;

  /** The scheme under which the editor opens the page of a check, where it has one. */
  pageScheme: string | undefined;

  readonly #house: Pick<HouseSettings, "fatesOf">;

  constructor(workspace: Workspace, house: Pick<HouseSettings, "fatesOf">) {
    this.#workspace = workspace;
    this.#house = house;
  }

  /** The same set as before, with the same id, where nothing in it changed. */
  of(snapshot: Snapshot, findings = snapshot.findings, more: readonly Diagnostic[] = []): DiagnosticSet {
    const { file } = snapshot;
    const last = this.#last.get(file.path);
    const { first, more: left } = firstOfEach(findings, mostOfAKind);
    const fates = this.#house.fatesOf(this.#workspace.uri(file.path));
    const items = [
      ...first.flatMap((finding) => weighed(this.#diagnostic(snapshot, finding), finding, fates)),
      ...[...left].map(([check, count]) => restOf(check, count)),
      ...more,
    ].map((item, at) => unlessSame(last?.items[at], item));
    const same = last && last.items.length === items.length && items.every((item, at) => item === last.items[at]);
    if (same) return last;
    const set = { id: String(++this.#sets), items };
    this.#last.set(file.path, set);
    return set;
  }

  last(path: string): DiagnosticSet | undefined {
    return this.#last.get(path);
  }

  /** What was found before, and that it may not be right any more: never an empty list, which looks like a clean file. */
  failed(path: string, error: unknown): DiagnosticSet {
    const before = this.#last.get(path);
    const failure = failureOf(error);
    const items = [failure, ...(before?.items ?? []).filter((item) => item !== underWay && !isFailure(item))];
    const [first] = before?.items ?? [];
    if (before && first && isFailure(first) && first.message === failure.message) return before;
    const set = { id: String(++this.#sets), items };
    this.#last.set(path, set);
    return set;
  }

  forget(path: string): void {
    this.#last.delete(path);
  }

  #diagnostic(snapshot: Snapshot, finding: Finding): Diagnostic {
    const { positions } = snapshot;
    const range = rangeOf(positions, finding.spot);
    const related = this.#related(snapshot, finding);
    const places = `${range.start.line}:${related.map(({ location }) => `${location.uri}:${location.range.start.line}`).join()}`;
    const before = this.#kept.get(finding);
    if (before?.places === places) return before.diagnostic;
    const fixes = finding.fixes.map(({ title, edits, safe }) => ({
      title,
      safe,
      edits: edits.map((edit) => editOf(positions, finding.spot.segment, edit)),
    }));
    const diagnostic: Diagnostic = {
      range,
      severity: severities[finding.severity],
      source: "wayfile",
      code: finding.check,
      ...(this.pageScheme === undefined
        ? {}
        : { codeDescription: { href: `${this.pageScheme}:/${finding.check}.md` } }),
      message: messageOf(finding),
      ...(related.length > 0 ? { relatedInformation: related } : {}),
      ...(fixes.length > 0 ? { data: { fixes } } : {}),
    };
    this.#kept.set(finding, { places, diagnostic });
    return diagnostic;
  }

  /** Other lines that a finding speaks of. */
  #related(snapshot: Snapshot, { related }: Finding): DiagnosticRelatedInformation[] {
    return related.flatMap(({ spot, message }) => {
      const location = locationOf(this.#workspace, snapshot, spot);
      return location ? [{ location, message }] : [];
    });
  }
}

/** As the settings of the repository have it: what they suppress stays to be seen, with their reason. */
function weighed(item: Diagnostic, finding: Finding, fates: FatesOf | undefined): Diagnostic[] {
  const fate = fates?.(finding);
  if (fate === undefined) return [item];
  if (fate.is === "left out") return [];
  if (fate.is === "shown")
    return [fate.severity === finding.severity ? item : { ...item, severity: severities[fate.severity] }];
  const message = `${item.message} (suppressed by ${settingsFile}: ${fate.by.reason})`;
  return [{ ...item, severity: DiagnosticSeverity.Hint, message }];
}

/** With the source of its limit at the end: a list of problems gives a finding one row. */
function messageOf({ message, limit, working, source }: Finding): string {
  if (!source || source.ref === "" || !(limit || working) || message.includes(source.ref)) return message;
  return `${message} [${folded(source.ref)}]`;
}

/** Of one kind in one file: as many as ten thousand ways may have, and no more than an editor can hold. */
const mostOfAKind = 20_000;

const restOf = (check: string, count: number): Diagnostic => ({
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
  severity: DiagnosticSeverity.Error,
  source: "wayfile",
  code: check,
  message: `${count} more findings of this kind are not shown: put the first ${mostOfAKind} right, or divide the file.`,
});

/** What is found so far must not be taken for all there is. */
export const underWay: Diagnostic = {
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
  severity: DiagnosticSeverity.Information,
  source: "wayfile",
  code: "check/under-way",
  message: "This file is still being checked: more may be found in it.",
};

/** It stands at the top of a file, where no check of a way stands. */
const failureOf = (error: unknown): Diagnostic => ({
  range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
  severity: DiagnosticSeverity.Error,
  source: "wayfile",
  code: "check/failed",
  message: `Checking this file failed, so what is shown of it may be out of date (${reasonOf(error)}). Please report it.`,
});

const isFailure = ({ code, range }: Diagnostic): boolean =>
  code === "check/failed" && range.start.line === 0 && range.end.character === 0;

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The one that was sent before, where the new one says the same: findings of the language are made afresh each time. */
function unlessSame(before: Diagnostic | undefined, now: Diagnostic): Diagnostic {
  if (!before || before === now || before.code !== now.code) return now;
  return JSON.stringify(before) === JSON.stringify(now) ? before : now;
}
