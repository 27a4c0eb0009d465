/** What a circuit of one use is, and one of two uses is not: what protects itself, feeds back, signals or drives alone. */
import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { uses } from "../../grammar/choices.ts";
import { extraLow, feedsBack, isSource } from "../../server/circuit/circuit-kind.ts";
import { loadTerms } from "../../server/circuit/loads.ts";
import { conductorUse } from "../../server/circuit/minimum.ts";
import { overloadProtected } from "../../server/circuit/overload-relations.ts";
import { overloadRelay } from "../../server/circuit/overload-relay.ts";
import { specialLocationsOf } from "../../server/circuit/place-words.ts";
import type { WayStudy } from "../../server/circuit/way.ts";
import { hasResult } from "../../server/readings/inspection-scope.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const studied = (lines: string, setting: Setting = {}): WayStudy =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 radial "Circuit" {\n${lines}\n}`, setting).text), "A"), "1");

describe("a circuit that serves", () => {
  const of = (uses: string) => {
    const study = studied(uses === "" ? "" : `serves ${uses}`);
    return [
      ...(extraLow(study) ? ["extra-low"] : []),
      ...(feedsBack(study) ? ["feeds back"] : []),
      ...(isSource(study) ? ["source"] : []),
      conductorUse(study),
    ];
  };

  // Table 52.3: 1.5 mm² for power, less for lighting and for signalling and control.
  it.each([
    ["", ["signalling"]],
    ["selv", ["extra-low", "signalling"]],
    ["selv data", ["signalling"]],
    ["data selv", ["signalling"]],
    ["selv lighting", ["lighting"]],
    ["lighting", ["lighting"]],
    ["lighting ventilation", ["lighting"]],
    ["alarms lighting", ["lighting"]],
    ["alarms", ["signalling"]],
    ["lighting sockets", ["power"]],
    ["sockets lighting", ["power"]],
    ["control sockets", ["power"]],
    ["sockets control", ["power"]],
    ["pv", ["feeds back", "source", "power"]],
    ["storage", ["feeds back", "source", "power"]],
    ["pv storage", ["feeds back", "source", "power"]],
    ["pv sockets", ["feeds back", "power"]],
    ["sockets storage", ["feeds back", "power"]],
  ])("%j is %j", (uses, wanted) => expect(of(uses)).toEqual(wanted));

  // A relay watches all that the cable carries only where it drives nothing but motors.
  it.each([
    ["motor", 12],
    ["motor ventilation", 12],
    ["motor sockets", undefined],
    ["lighting motor", undefined],
    ["sockets", undefined],
  ])("%j with a relay set to 12 A has one of %s A", (uses, setting) => {
    expect(overloadRelay(studied(`serves ${uses}\noverload 12 A`))?.setting).toBe(setting);
  });
  it("nothing that is written has none", () => expect(overloadRelay(studied("overload 12 A"))).toBeUndefined());
});

describe("the terms of several loads", () => {
  it.each([
    ["load 2.3 kW", ["Σ P / U", "2300 W / 230 V"]],
    ["load 2.3 kW\nload 4 A", ["Σ P / U", "2300 W / 230 V + 4 A"]],
    ["load 2.3 kW efficiency 80 %\nload 4 A", ["Σ P / (U × η)", "2300 W / (230 V × 0.8) + 4 A"]],
    ["load 4 A\nload 2.3 kW efficiency 80 %", ["Σ P / (U × η)", "4 A + 2300 W / (230 V × 0.8)"]],
    ["power-factor 90 %\nload 2.3 kW", ["Σ P / (U × cos φ)", "2300 W / (230 V × 0.9)"]],
  ])("%j: %j", (lines, wanted) => {
    const study = studied(lines);
    const { name, terms } = loadTerms(study.facts.all("load"), study);
    expect([name, terms]).toEqual(wanted);
  });
});

describe("the place of a way", () => {
  const of = (own: string, board: string) => {
    const study = studied(own, { board: `fed-from supply\n${board}` });
    return [...specialLocationsOf(study.facts, study.context.board.facts).names].toSorted();
  };
  it.each([
    ["", "", []],
    ["", "place fairground", ["fairground"]],
    ["place bathroom", "", ["bathroom"]],
    // The nearest counts; what is only added to a place leaves that of the board standing.
    ["place bathroom", "place fairground", ["bathroom"]],
    ["place ordinary", "place fairground", []],
    ["place skilled-only", "place fairground", ["fairground", "skilled-only"]],
    ["place skilled-only bathroom", "place fairground", ["bathroom", "skilled-only"]],
    ["place bathroom skilled-only", "place fairground", ["bathroom", "skilled-only"]],
  ])("%j on a board with %j is %j", (own, board, wanted) => expect(of(own, board)).toEqual(wanted));
});

// 433.1.1: 6 mm² clipped direct carries 47 A (Table 4D5).
describe("a cable is protected against overload", () => {
  const cable = "cable flat-twin line 6 mm² cpc 2.5 mm²\nroute clipped method C";
  it.each([
    [`device BS EN 60898 B40 6 kA\n${cable}`, true],
    [`device BS EN 60898 B50 6 kA\n${cable}`, false],
    // That the load is more than the device is for is its own matter.
    [`device BS EN 60898 B40 6 kA\n${cable}\nIb 45 A`, true],
    [`device BS EN 60898 B50 6 kA\n${cable}\nIb 45 A`, false],
    // BS 3036 fuses: In ≤ 0.725 × Iz, 34 A.
    [`device BS 3036 30 A\n${cable}`, true],
    [`device BS 3036 45 A\n${cable}`, false],
    [cable, false],
  ])("with %j: %s", (lines, wanted) => expect(overloadProtected(studied(lines))).toBe(wanted));
});

describe("a block of tests has a result", () => {
  const limited = 'LIM "No access"';
  it.each([
    ["R1+R2 0.41 Ω", true],
    [`R1+R2 ${limited}`, false],
    [`R1+R2 ${limited}\npolarity ok`, true],
    [`polarity ok\nR1+R2 ${limited}`, true],
    [`insulation 500 V L-N ${limited} L-E 280 MΩ N-E ${limited}`, true],
    [`insulation 500 V L-N ${limited} L-E N/A N-E ${limited}`, false],
    ["temperature 20 °C", false],
    ['note "Wet"', false],
  ])("%j: %s", (lines, wanted) => {
    const [test] = studied(`dead 2026-03-04 {\n${lines}\n}`).deadTests;
    expect(test && hasResult(test.facts)).toBe(wanted);
  });
});

it("no question is asked of a use that the language has no word for", () => {
  const root = join(import.meta.dirname, "../..");
  const asked = globSync("server/**/*.ts", { cwd: root }).flatMap((file) =>
    [...readFileSync(join(root, file), "utf8").matchAll(/\buses\.has\("([^"]+)"\)/g)].map(([, use = ""]) => use),
  );
  expect(asked).toContain("lighting");
  expect(asked.filter((use) => !Object.hasOwn(uses, use))).toEqual([]);
});
