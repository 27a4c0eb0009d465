/** Boards that feed each other: what is kept of one while another, the supply or a name is edited is what a fresh start finds. */
import { expect, it } from "vitest";
import { pages } from "../../server/rules/frame/catalogue.ts";
import { Positions } from "../../server/syntax/document.ts";
import { lineStarts, offsetOf } from "../../server/text/lines.ts";
import type { Snapshot } from "../../server/workspace/workspace.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { random } from "../helpers/random.ts";
import { digitEdit, lineEdits } from "./line-edits.ts";

const path = "file:///network.ways";

/** The samples of the checks that have several boards, without their marks. */
const networks = pages
  .flatMap(({ examples }) => examples.flatMap(({ bad, good }) => [bad, good]))
  .filter((text) => /^ *installation/m.test(text) && (text.match(/^ *board /gm) ?? []).length > 1)
  .map((text) => text.replace(/^\s*\^.*\n/gm, ""));

function opened(text: string): Workspace {
  const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: (_, use) => use });
  workspace.open(path, 1, text);
  return workspace;
}

const snapshotOf = (workspace: Workspace): Snapshot => {
  const snapshot = workspace.snapshot(path);
  if (!snapshot) throw new Error("The file is not there.");
  return snapshot;
};

function shown({ findings, file }: Snapshot): string[] {
  const positions = new Positions(file.document);
  const at = ({ segment, start, end }: Snapshot["findings"][number]["spot"]) =>
    positions.has(segment) ? [positions.place(segment, start), positions.place(segment, end)] : "nowhere";
  return findings.map(({ check, severity, message, working, spot, related, fixes }) =>
    JSON.stringify([
      check,
      severity,
      message,
      working,
      at(spot),
      related.map((one) => [at(one.spot), one.message]),
      fixes,
    ]),
  );
}

it.each(Array.from({ length: 30 }, (_, index) => index))("after every edit from seed %i", (seed) => {
  expect(networks.length).toBeGreaterThan(20);
  const next = random(seed);
  let text = networks[Math.floor(next() * networks.length)] ?? "";
  const workspace = opened(text);
  void snapshotOf(workspace).findings;
  for (let version = 2; version < 24; version++) {
    // What all boards share is edited most: each of them is another for it.
    const head = text.slice(0, text.search(/^ *board /m));
    const edit = next() < 0.7 ? digitEdit(head, next) : next() < 0.5 ? lineEdits(text, next) : digitEdit(text, next);
    if (!edit.range) continue;
    const starts = lineStarts(text);
    const [from, to] = [edit.range.start, edit.range.end].map((place) => offsetOf(starts, text, place));
    text = text.slice(0, from) + edit.text + text.slice(to);
    workspace.edit(path, version, [edit]);
    expect(shown(snapshotOf(workspace)), JSON.stringify(edit)).toEqual(shown(snapshotOf(opened(text))));
  }
});

it.each([5, 9])("what a finding names beside its own line moves with a line above it, line %d", (line) => {
  const text = `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.38 Ω
  }
  board A "Main" {
    fed-from supply
    Zdb 0.21 Ω
    way 1 radial "Heater" {
      device BS EN 60898 B16 6 kA
      live 2026-03-04 {
        Zs 0.15 Ω
      }
    }
  }
}
`;
  const workspace = opened(text);
  const before = shown(snapshotOf(workspace));
  const place = { line, character: 0 };
  workspace.edit(path, 2, [{ range: { start: place, end: place }, text: "    # Read again in the morning\n" }]);
  const after = shown(snapshotOf(workspace));
  const lines = text.split("\n");
  expect(after).toEqual(
    shown(snapshotOf(opened(lines.toSpliced(line, 0, "    # Read again in the morning").join("\n")))),
  );
  expect(after).not.toEqual(before);
  for (const check of ["loop/board-below-upstream", "loop/zs-below-board"])
    expect(after.filter((one) => one.includes(check))).toHaveLength(1);
});
