/** What a record allows of fixes: a reading is what the meter showed, a part on the wall is what it is. */
import { describe, expect, it } from "vitest";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { allIn, fixed, foundBy } from "../helpers/fixing.ts";
import { inSetting, unmark } from "../helpers/sample.ts";

const tested = (lines: string, board?: string): string =>
  inSetting(lines, { stage: "tested", ...(board ? { board } : {}) }).text;

const problemsIn = (text: string): string[] =>
  [...fileOfText("sample.ways", text).model.problems.values()].flat().map(({ message }) => message);

const lowVoltage = tested(`way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation  250 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ
  }
}`);

describe("a reading", () => {
  it("taken at 250 V is never turned into one at 500 V but by whoever says that it was written wrongly, and keeps what stood there", () => {
    const titles = foundBy("insulation/test-voltage", lowVoltage)[0]?.fixes.map(({ title }) => title);
    expect(titles).toEqual(["Record why it was tested at this voltage", "I wrote it wrongly: it was tested at 500 V"]);
    const after = fixed("insulation/test-voltage", lowVoltage, 1);
    expect(after).toContain('insulation  500 V was 250 V "Test voltage written wrongly"  L-N 310 MΩ');
    expect(problemsIn(after)).toEqual([]);
  });

  it("is corrected by its decimal point in words, with what stood there", () => {
    const text = tested(`way 1 radial "Heater" {
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  length  20 m
  dead 2026-03-04 {
    R1+R2  3.90 Ω
  }
}`);
    expect(foundBy("continuity/r1r2-against-length", text)[0]?.fixes.map(({ title }) => title)).toEqual([
      "I misread it: 0.39 Ω, not 3.90 Ω",
    ]);
    expect(fixed("continuity/r1r2-against-length", text)).toContain('R1+R2  0.39 Ω was 3.90 Ω "Decimal point misread"');
  });

  const samples = rules.flatMap(({ id, examples }) =>
    examples.map(({ bad, setting }, index) => ({ id, index, text: inSetting(unmark(bad).text, setting).text })),
  );

  it("of no check's sample is replaced by a fix that does not keep it", () => {
    const lost = samples.flatMap(({ id, index, text }) =>
      foundBy(id, text).flatMap(({ fixes, spot }) =>
        fixes.flatMap(({ title, edits, misread }) => {
          if (misread || id.startsWith("language/")) return [];
          const replaced = edits.map(({ start, end }) => spot.segment.text.slice(start, end)).join(" ");
          const inTests = edits.some(({ start, end }) => end > start && inBlock(spot.segment.text, start));
          return inTests && /\d/.test(replaced) ? [`${id} ${index}: ${title}`] : [];
        }),
      ),
    );
    expect(lost).toEqual([]);
  });
});

/** Whether a place lies in a block of tests. */
function inBlock(text: string, at: number): boolean {
  const open = [...text.slice(0, at).matchAll(/^[ \t]*(?:dead|live) [^\n]*\{[^\n]*$/gm)].at(-1);
  return open !== undefined && !/^[ \t]*\}/m.test(text.slice(open.index, at));
}

describe("a part that is installed", () => {
  const thin = `way 1 radial "Heater" {
  device  BS EN 60898 B32 6 kA
  cable   flat-twin 70 °C line 1.5 mm² cpc 1.0 mm²
  route   clipped method C
  length  10 m
  Ib      12 A
  serves  appliance
}`;

  it("is proposed another while it is a design, and stays what it is once it is installed", () => {
    const designed = foundBy("design/device-over-capacity", inSetting(thin).text)[0]?.fixes ?? [];
    expect(designed.map(({ title }) => title)).toEqual(["Make it 4 mm² with 1.5 mm²", "Make the device B13"]);
    expect(foundBy("design/device-over-capacity", tested(thin))[0]?.fixes).toEqual([]);
    expect(foundBy("design/device-over-capacity", inSetting(thin, { work: "existing" }).text)[0]?.fixes).toEqual([]);
  });

  it("gets no RCD by a click", () => {
    const bare = `way 1 radial "Sockets" {
  device  BS EN 60898 B16 6 kA
  serves  sockets
}`;
    const board = "fed-from supply\nmain-switch BS EN 60947-3 100 A\nrcd east BS EN 61008 63 A 30 mA type A";
    expect(foundBy("rcd/missing-for-sockets", inSetting(bare, { board }).text)[0]?.fixes).toHaveLength(2);
    expect(foundBy("rcd/missing-for-sockets", tested(bare, board))[0]?.fixes).toEqual([]);
  });

  it("that cannot be as it is written is put right in words, and what stood there is noted", () => {
    const text = tested(`way 1 radial "Heater" {
  device  BS EN 60898 B31 6 kA
}`);
    const [finding] = allIn(text).filter(({ fixes }) => fixes.some(({ slip }) => slip));
    expect(finding?.fixes[0]?.title).toMatch(/^It was written wrongly: make it B\d+$/);
    const after = fixed(finding?.check ?? "", text);
    expect(after).toContain('note "Corrected: was written B31"');
    expect(problemsIn(after)).toEqual([]);
  });
});
