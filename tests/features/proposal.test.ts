import { describe, expect, it } from "vitest";
import { proposalEdits } from "../../server/features/proposal.ts";
import { applyEdits } from "../../server/text/lines.ts";
import { openSample } from "../helpers/cursor.ts";
import { inSetting } from "../helpers/sample.ts";

/** The way after the action, or nothing where it is not offered. */
async function proposedFor(lines: string): Promise<string | undefined> {
  const { snapshot } = await openSample(inSetting(lines).text);
  const segment = snapshot.file.document.segments.find(({ word }) => word === "way");
  const edits = segment ? proposalEdits(snapshot, segment) : [];
  return segment && edits.length > 0 ? applyEdits(segment.text, edits) : undefined;
}

const facts = (device = "", cable = "", load = "Ib           13.0 A") => `way 1 radial "Heater" {
${[device, cable].filter((line) => line !== "").join("\n")}
  route        clipped method C
  length       18 m
  ${load}
  serves       water-heater
}`;

describe("propose device and cable for this way", () => {
  it("writes both where neither is there", async () => {
    const text = await proposedFor(facts());
    expect(text).toContain("device       BS EN 60898 B16 6 kA\n");
    expect(text).toContain("cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²\n");
  });

  it("keeps a device that carries the load, and finds the cable for it", async () => {
    const text = await proposedFor(facts("device       BS EN 60898 B20 6 kA"));
    expect(text).toContain("device       BS EN 60898 B20 6 kA\n");
    expect(text).toContain("cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²\n");
  });

  it("replaces what does not fit", async () => {
    const text = await proposedFor(
      facts(
        "device       BS EN 60898 B32 6 kA",
        "cable        flat-twin line 2.5 mm² cpc 1.5 mm²  # spare drum",
        "Ib 30 A",
      ),
    );
    expect(text).toContain("device       BS EN 60898 B32 6 kA\n");
    expect(text).toContain("cable        flat-twin  line 4 mm²  cpc 1.5 mm²  # spare drum\n");
  });

  it.each([
    ["all is well", facts("device       BS EN 60898 B16 6 kA", "cable        flat-twin line 2.5 mm² cpc 1.5 mm²")],
    ["the load is missing", facts("", "", "points 1")],
    ["the load is half typed", facts("", "", "Ib 13")],
    ["the way is spare", "way 1 spare"],
  ])("is not offered where %s", async (_, lines) => {
    expect(await proposedFor(lines)).toBeUndefined();
  });
});
