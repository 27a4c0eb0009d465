import { describe, expect, it } from "vitest";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { allIn, fixed, foundBy } from "../helpers/fixing.ts";
import { inSetting, unmark } from "../helpers/sample.ts";

/**
 * Every fix these checks offer on their own samples leaves a text that can be read, of which the check has less to say,
 * and in which nothing graver is found than before.
 */

const families = /^(design|loop|drop|demand|energy|fault|coordination|containment|protective|rcd)\//;
/** What completing a record brings to light, and did not cause: the type and the multiple were there before they were written. */
const broughtToLight = ["rcd/test-missing", "rcd/type-unsuitable"];
const gravity = { information: 0, warning: 1, error: 2 } as const;

const offers = rules
  .filter(({ id }) => families.test(id))
  .flatMap(({ id, examples }) =>
    examples.flatMap(({ bad, setting }) => {
      const text = inSetting(unmark(bad).text, setting).text;
      return (foundBy(id, text)[0]?.fixes ?? []).map(({ title }, which) => ({ id, title, text, which }));
    }),
  );

describe("a fix puts right what it was offered for", () => {
  it("and many are offered", () => expect(offers.length).toBeGreaterThan(30));

  it.each(offers)("$id: $title", ({ id, text, which }) => {
    const after = fixed(id, text, which);
    const problems = [...fileOfText("sample.ways", after).model.problems.values()].flat();
    expect(problems.map(({ message }) => message)).toEqual([]);
    expect(foundBy(id, after).length).toBeLessThan(foundBy(id, text).length);
    const before = new Map<string, number>();
    for (const { check, severity } of allIn(text))
      before.set(check, Math.max(before.get(check) ?? gravity.warning, gravity[severity]));
    const graver = allIn(after).filter(
      ({ check, severity }) =>
        gravity[severity] > (before.get(check) ?? gravity.warning) &&
        !(/^rcd\/(time-without-multiple|type-not-stated)$/.test(id) && broughtToLight.includes(check)),
    );
    expect(graver.map(({ check, message }) => `${check}: ${message}`)).toEqual([]);
  });

  // What a meter showed, what a device is marked with and what a builder decides is written by nobody but them.
  it("is offered for whatever a larger or another part would put right", () => {
    const offering = new Set(offers.map(({ id }) => id));
    for (const id of [
      "coordination/switch-below-device",
      "design/cable-does-not-exist",
      "design/device-does-not-exist",
      "design/device-oversized",
      "design/device-over-capacity",
      "demand/over-main-switch",
      "loop/design-loop-over-limit",
      "drop/over-limit",
      "energy/live-conductor-too-thin",
      "containment/over-full",
      "containment/grouping-understated",
      "protective/earthing-conductor-too-small",
      "rcd/sensitivity-too-high",
      "rcd/missing-in-tt",
      "rcd/missing-for-sockets",
      "rcd/unidirectional-with-source",
      "rcd/charger-dc-detection",
    ])
      expect(offering, id).toContain(id);
  });
});

describe("where neither a device nor a cable alone would do", () => {
  it("both are made larger by one fix, and nothing is left to say of either", () => {
    const text = inSetting(
      `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   flat-twin line 4 mm² cpc 1.5 mm²
  route   clipped method C
  length  8 m
  Ib      40 A
  serves  heating
}`,
    ).text;
    expect(foundBy("design/load-over-device", text)[0]?.fixes.map(({ title }) => title)).toEqual([
      "Make the device B40 and the cable 6 mm²",
    ]);
    const after = fixed("design/load-over-device", text);
    expect(after).toContain("BS EN 60898 B40 6 kA");
    expect(after).toContain("line 6 mm² cpc 2.5 mm²");
    expect(allIn(after).filter(({ check }) => families.test(check) && /^(design|loop|drop)/.test(check))).toEqual([]);
  });
});

describe("a finding that holds a value against a limit", () => {
  const measured = rules
    .filter(({ id }) => families.test(id))
    .flatMap((rule) => rule.examples.map(({ bad, setting }) => ({ id: rule.id, bad, setting })));

  it.each(measured)("$id names where the limit comes from", ({ id, bad, setting }) => {
    const found = foundBy(id, inSetting(unmark(bad).text, setting).text);
    expect(found.length).toBeGreaterThan(0);
    for (const { value, limit, source } of found) if (value && limit) expect(source?.ref).toMatch(/\S/);
  });
});
