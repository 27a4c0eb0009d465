import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

/** What is said of the terminals of a clipped armoured circuit, as its severity. */
function said(lines: readonly string[], setting: Setting = {}): string[] {
  const way = ['way 1 radial "Kiln" {', "route clipped method C", "serves heating", ...lines, "}"].join("\n");
  return findingsOf(inSetting(way, setting).text)
    .filter(({ check }) => check === "design/terminals-too-hot")
    .map(({ severity }) => severity);
}

const device = "device BS EN 60898 C32 6 kA";
const cable = "cable armoured 90 °C line 2.5 mm² cpc 2.5 mm² cores 3";

// Two-core armoured cable, clipped, 2.5 mm²: 36 A at 90 °C by Table 4E4A, 28 A at 70 °C by Table 4D4A (BS 7671:2018), the latter
// from memory, so that what fails by less than a tenth is unproven.
describe("the terminals of a 90 °C cable", () => {
  it.each([
    ["28 A and no more", ["Ib 28 A"], []],
    ["28.5 A", ["Ib 28.5 A"], ["warning"]],
    ["28.5 A, with terminals that stand it", ["Ib 28.5 A", "terminals 90 °C"], []],
    ["28.5 A, with terminals that do not", ["Ib 28.5 A", "terminals 70 °C"], ["warning"]],
    ["28.5 A, half said", ["Ib 28.5 A", "terminals"], []],
    ["nothing known of the load", [], ["information"]],
  ])("carrying %s", (_, lines, severities) => expect(said([device, cable, ...lines])).toEqual(severities));

  it("are asked after softly where they have served for years", () =>
    expect(said([device, cable, "Ib 30 A"], { work: "existing" })).toEqual(["information"]));

  it("have nothing to do with a 70 °C cable", () =>
    expect(said([device, cable.replace("90 °C", "70 °C"), "Ib 30 A"])).toEqual([]));
});
