/** What is shown while a check is under way is part of what it finds in the end. */
import { expect, it } from "vitest";
import { Workspace } from "../../server/workspace/workspace.ts";
import { generate } from "../helpers/generate.ts";

const path = "file:///a.ways";

function opened(text: string) {
  const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: (_, use) => use });
  workspace.open(path, 1, text);
  const snapshot = workspace.snapshot(path);
  if (!snapshot) throw new Error("The file is not there.");
  return snapshot;
}

const key = ({ check, message, spot }: { check: string; message: string; spot: { start: number } }): string =>
  `${check} ${spot.start} ${message}`;

it("at every step, with departures that suppress and departures that do not", () => {
  const departures = '\n  departure loop/zs-over-limit "As agreed"\n  departure demand/over-cutout "Not met"\n  stage';
  const text = generate({ ways: 96 })
    .replaceAll(/^(\s+Zs\s+)[\d.]+ Ω/gm, "$19.99 Ω")
    .replace(/\n {2}stage/, departures);
  expect(text).toContain("Not met");
  const final = new Set(opened(text).findings.map(key));
  const snapshot = opened(text);
  const run = snapshot.check();
  let most = 0;
  for (let state = run.step(5); state === "more"; state = run.step(5)) {
    const sofar = snapshot.soFar ?? [];
    for (const finding of sofar) expect(final).toContain(key(finding));
    expect(sofar.length).toBeGreaterThanOrEqual(most);
    most = sofar.length;
  }
  expect(most).toBeGreaterThan(0);
  expect(new Set(snapshot.soFar?.map(key))).toEqual(final);
});
