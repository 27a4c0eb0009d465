import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { studyWay } from "../../server/circuit/way.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { propose } from "../../server/proposal/propose.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { generate } from "../helpers/generate.ts";
import { inSetting } from "../helpers/sample.ts";
import { firstWay, proposed, textWith } from "./helpers.ts";

describe("rough text", () => {
  const linesOf = (text: string): string[] => text.split("\n").map((line) => line.trim().replaceAll(/ +/g, " "));

  it("of any kind is survived, and every line but those of device and cable stays", () => {
    const whole = generate({ ways: 8, seed: 7 });
    fc.assert(
      fc.property(fc.nat(whole.length), fc.nat(60), fc.string({ maxLength: 8 }), (at, cut, put) => {
        const file = fileOfText("a.ways", whole.slice(0, at) + put + whole.slice(at + cut));
        for (const installation of installationsOf([file])) {
          for (const { board, context } of installation.boards) {
            for (const way of board.ways) {
              const study = studyWay(way, context);
              const proposal = propose(study, {}, installation);
              const after = new Set(linesOf(textWith(file, study, proposal)));
              const kept = linesOf(way.segment.text).filter((line) => line !== "" && !/^(device|cable)\b/.test(line));
              expect(kept.filter((line) => !after.has(line))).toEqual([]);
            }
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  const facts = "route clipped method C\n  length 9 m\n  Ib 13 A\n  serves heating";
  it.each([
    ["a block", `way 1 radial "Heater" {\n  ${facts}\n}`],
    ["a comment behind the brace", `way 1 radial "Heater" { # in the loft\n  ${facts}\n}`],
    ["a comment above and below", `way 1 radial "Heater" {\n  # one\n  ${facts}\n  # two\n}`],
    ["a cable line below the rest", `way 1 radial "Heater" {\n  ${facts}\n  cable flat-twin\n}`],
    ["a device line below the rest", `way 1 radial "Heater" {\n  ${facts}\n  device BS EN 60898 # old\n}`],
    ["a brace in the title", `way 1 radial "Heater {2}" {\n  ${facts}\n}`],
  ])("with %s takes both lines, keeps every comment, and is sound", (_, lines) => {
    const { after, before, proposal } = proposed(lines);
    expect(proposal.outcome).toBe("fits");
    const file = fileOfText("a.ways", after);
    expect([...file.model.problems.values()].flat()).toEqual([]);
    const { device, cable } = firstWay(file);
    expect([device?.rating, cable?.line, cable?.cpc]).toEqual([16, 1.5, 1]);
    for (const comment of before.match(/#.*/g) ?? []) expect(after).toContain(comment);
  });

  it("where the rest of the file is not laid out stays as it is", () => {
    const text = inSetting(`way 1 radial "Heater" {\n  ${facts}\n}\nway   2   spare`).text;
    const file = fileOfText("a.ways", text);
    const study = firstWay(file);
    const after = textWith(file, study, propose(study));
    expect(after).toContain("\nway   2   spare\n");
    expect(after.startsWith(text.slice(0, text.indexOf("way 1")))).toBe(true);
  });
});
