/** However many points a circuit has, a diagnosis ends soon; where not everything was tried, that is said. */
import { describe, expect, it } from "vitest";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";

const sources: Sources = { file: () => ({ failure: "" }), resolve: (_, use) => use };

/** A ring whose legs and points disagree, and where no one fault explains it. */
function ring(points: number): string {
  const leg = `${(60 / (points + 1)).toFixed(2)} m`;
  const names = Array.from({ length: points }, (_, at) => `S${at + 1}`);
  const readings = names.map((name, at) => {
    const [neutral, cpc] = [0.23 + (at % 7 === 3 ? 0.09 : 0), 0.29 + (at % 5 === 2 ? 0.12 : 0)];
    return `        at ${name}  L-N ${neutral.toFixed(2)} Ω  L-E ${cpc.toFixed(2)} Ω`;
  });
  return `wayfile 1
installation "Many points" {
  stage  dead-tested
  board A "Board" {
    way 1 ring "Sockets" {
      cable  flat-twin line 2.5 mm² cpc 1.5 mm²
      run    A ${names.map((name) => `${leg} ${name}`).join(" ")} ${leg} A
      dead 2026-03-04 {
        ends  r1 0.94 Ω  rn 0.44 Ω  r2 0.73 Ω
${readings.join("\n")}
      }
    }
  }
}
`;
}

const saidOf = (points: number): string[] =>
  checkProject(fileOfText("many.ways", ring(points)), sources).files.flatMap(({ findings }) =>
    findings.filter(({ check }) => check === "diagnosis/readings-disagree").map(({ message }) => message),
  );

describe("a ring that disagrees", () => {
  it.each([
    [12, /^These readings do not fit a sound circuit\. Nothing that was tried[^:]*$/],
    [60, /tried between some of its many points only\.$/],
    [150, /Two faults at once were not tried: the circuit has too many points\.$/],
    [400, /^These readings do not fit a sound circuit\. The circuit has too many points for a diagnosis: divide it\.$/],
  ])("of %i points", (points, expected) => {
    expect(saidOf(points)).toEqual([expect.stringMatching(expected)]);
  });
});
