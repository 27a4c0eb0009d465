/** A diagnosis that takes long is worked out a little at a time, and comes to the same however often it is left. */
import { describe, expect, it } from "vitest";
import { studyWay, type WayStudy } from "../../server/circuit/way.ts";
import { type Diagnosis, diagnose, isSound } from "../../server/diagnosis/index.ts";
import { diagnosisInSteps, diagnosisOfWay } from "../../server/diagnosis/of-way.ts";
import { sheetOfWay } from "../../server/diagnosis/read.ts";
import { Engine } from "../../server/model/engine.ts";
import type { BoardInPlace } from "../../server/model/installation.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { checkBoardInSlices } from "../../server/rules/frame/check-board.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { Project } from "../../server/workspace/project.ts";
import { random } from "../helpers/random.ts";

/** A ring of points with readings that no sound one gives, by the resistances of 2.5 mm² and 1.5 mm² copper. */
function ring(points: number, seed: number): string {
  const next = random(seed);
  const at = Array.from({ length: points }, (_, index) => {
    const off = next() < 0.2 ? 0.3 * next() : 0.01 * next();
    return `at S${index} L-N ${(0.15 + off / 2).toFixed(2)} Ω L-E ${(0.2 + off).toFixed(2)} Ω`;
  });
  const run = at.map((_, index) => `4 m S${index}`).join(" ");
  return `wayfile 1
installation "Ring" {
  stage        tested
  supply {
    earthing     TN-S
    Ze           0.30 Ω
  }
  board A "Board" {
    fed-from     supply
    way 1 ring "Sockets" {
      device       BS EN 60898 B32 6 kA
      cable        flat-twin line 2.5 mm² cpc 1.5 mm²
      run          A ${run} 4 m A
      dead 2026-04-14 {
        ends         r1 0.90 Ω rn 0.31 Ω r2 0.52 Ω
        ${at.join("\n        ")}
      }
      live 2026-04-15 {
        Zs           0.80 Ω
      }
    }
  }
}
`;
}

function placed(text: string): { readonly project: Project; readonly place: BoardInPlace; readonly study: WayStudy } {
  const nothing = { resolve: (_: string, use: string) => use, file: () => ({ failure: "there is no such file." }) };
  const project = new Project(fileOfText("a.ways", text), { ...nothing, engine: new Engine() });
  const place = project.installations[0]?.boards[0] as BoardInPlace;
  return { project, place, study: studyWay(place.board.ways[0] as never, place.context) };
}

const cases = [2, 5, 9, 24].flatMap((points) => [1, 2, 3].map((seed) => ({ points, seed })));

describe("a diagnosis in steps", () => {
  it.each(cases)("comes to what it comes to at once, of $points points, seed $seed", ({ points, seed }) => {
    const { study } = placed(ring(points, seed));
    const sheet = sheetOfWay(study);
    expect(sheet && isSound(sheet)).toBe(false);
    const atOnce = sheet && diagnose(sheet);
    // Two work at it by turns, and each leaves it for good now and then.
    let steps = 0;
    for (let left = true; left; ) {
      const [one, other] = [diagnosisInSteps(study), diagnosisInSteps(study)];
      for (let turn = 0; turn < 40 && left; turn++) {
        left = !one.next().done && !other.next().done;
        steps++;
      }
    }
    expect(steps).toBeGreaterThan(points);
    expect(diagnosisOfWay(study)?.diagnosis as Diagnosis).toEqual(atOnce);
  });

  it("lets others in while a board is checked, many times for one circuit, and finds the same", () => {
    const text = ring(30, 4);
    const { place, project } = placed(text);
    let stops = 0;
    for (const _ of checkBoardInSlices(place)) stops++;
    expect(stops).toBeGreaterThan(300);
    const found = (of: Project) =>
      checkInstallation(of.installations[0] as never).findings.map(({ check, message }) => `${check} ${message}`);
    expect(found(project).join("\n")).toContain("These readings do not fit a sound circuit.");
    expect(found(project)).toEqual(found(placed(text).project));
  });
});
