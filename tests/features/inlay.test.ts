import { describe, expect, it } from "vitest";
import { type HintMode, inlayHints } from "../../server/features/inlay.ts";
import { loft, openSample } from "../helpers/cursor.ts";

/** The lines that have a hint, each with what is said beside it. */
async function hints(text: string, mode: HintMode = "both"): Promise<string[]> {
  const { snapshot } = await openSample(text);
  const lines = text.split("\n");
  return inlayHints(snapshot, mode, () => true).map(({ segment, offset, text: said }) => {
    const { line, character } = snapshot.positions.place(segment, offset);
    return `${lines[line]?.slice(0, character).trim().replace(/\s+/g, " ")} « ${said}`;
  });
}

describe("hints beside the lines of a way", () => {
  it("say what is left, what is expected and what is still to be read", async () => {
    expect(await hints(loft)).toMatchInlineSnapshot(`
      [
        "run A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A « R1+R2 expected 0.21 Ω",
        "dead 2026-03-04 with M1 { « 7 to be read: L-N at S2 0.16 Ω; L-N at S3 0.16 Ω …",
        "ends r1 0.31 Ω rn 0.31 Ω r2 0.31 Ω « expected 0.31 Ω / 0.31 Ω / 0.31 Ω",
        "at S1 L-N 0.16 Ω L-E 0.16 Ω polarity ok « expected 0.16 Ω / 0.16 Ω",
        "at S5 L-N 0.22 Ω L-E 0.22 Ω polarity ok « expected 0.21 Ω / 0.21 Ω",
        "R1+R2 0.22 Ω « 67 % left of 0.67 Ω cold; expected 0.21 Ω",
        "Zs 0.64 Ω « 41 % left of 1.09 Ω cold; expected 0.64 Ω",
        "length 18 m « R1+R2 expected 0.54 Ω",
      ]
    `);
  });

  it("name all that is still to be read to whoever points at them", async () => {
    const { snapshot } = await openSample(loft);
    const open = inlayHints(snapshot, "both", () => true).find(({ text }) => text.includes("to be read"));
    expect(open?.text).toContain("7 to be read");
    expect(open?.tooltip.split("\n")).toHaveLength(3 + 4);
  });

  it("say what the first point should read where all of them state their polarity", async () => {
    const tests = `dead 2026-03-04 {
        at L1 L-E 0.25 Ω polarity ok
        at L2 L-E 0.55 Ω polarity ok
      }`;
    const all = await hints(loft.replace("length  18 m", `run     A 8 m L1 10 m L2\n      ${tests}`));
    expect(all.filter((hint) => hint.startsWith("at L1")).join()).toContain("expected 0.24 Ω");
  });

  it("say what each point of a radial should read, and in service", async () => {
    const tests = `dead 2026-03-04 {
        at L1 L-E 0.25 Ω
      }
      live 2026-03-05 {
        at L1 Zs 0.68 Ω
      }`;
    const all = await hints(loft.replace("length  18 m", `run     A 8 m L1 10 m L2\n      ${tests}`));
    expect(
      all.filter((hint) => /^(run A 8|at L1|dead 2026-03-04 \{|live 2026-03-05 \{)/.test(hint)),
    ).toMatchInlineSnapshot(`
      [
        "run A 8 m L1 10 m L2 « R1+R2 expected 0.54 Ω",
        "dead 2026-03-04 { « 6 to be read: R1+R2 at L2, the highest 0.54 Ω; R1+R2, the highest of them 0.54 Ω …",
        "at L1 L-E 0.25 Ω « 95 % left of 5.40 Ω cold; expected 0.24 Ω",
        "live 2026-03-05 { « 3 to be read: Zs, the far point L2 0.96 Ω; 30 mA type A BS EN 61009 at 1 × IΔn …",
        "at L1 Zs 0.68 Ω « 88 % left of 5.82 Ω cold; expected 0.66 Ω",
      ]
    `);
  });

  it("show one kind alone, or none, as the setting says", async () => {
    const margins = await hints(loft, "margins");
    const expectations = await hints(loft, "expectations");
    expect(margins).toEqual(["R1+R2 0.22 Ω « 67 % left of 0.67 Ω cold", "Zs 0.64 Ω « 41 % left of 1.09 Ω cold"]);
    expect(expectations).toContain("length 18 m « R1+R2 expected 0.54 Ω");
    expect(expectations.filter((hint) => / left of | over /.test(hint))).toEqual([]);
    expect(await hints(loft, "off")).toEqual([]);
  });

  it("say nothing of a line that could not be understood", async () => {
    const broken = loft.replace("Zs           0.64 Ω", "Zs           0,64");
    const all = await hints(broken);
    expect(all.filter((hint) => hint.startsWith("Zs"))).toEqual([]);
    expect(all.filter((hint) => hint.startsWith("live"))).toEqual([]);
  });

  it("say nothing of sound insulation, and speak up near the limit", async () => {
    expect((await hints(loft)).filter((hint) => hint.startsWith("insulation"))).toEqual([]);
    const low = loft.replace("L-N 310 MΩ L-E >999 MΩ", "L-N 1.4 MΩ L-E 0.6 MΩ");
    expect((await hints(low)).filter((hint) => hint.startsWith("insulation"))).toEqual([
      "insulation 500 V L-N 1.4 MΩ L-E 0.6 MΩ N-E >999 MΩ « ▲ only 60 % of 1 MΩ",
    ]);
  });

  it("are asked for the lines an editor shows only", async () => {
    const { snapshot } = await openSample(loft);
    expect(inlayHints(snapshot, "both", () => false)).toEqual([]);
  });
});
