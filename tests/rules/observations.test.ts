/** Observations beside what is found: what has gone, and what nobody wrote down. */
import { describe, expect, it } from "vitest";
import { check } from "../../server/library/index.ts";

const schedule = ({ observations = "", kind = "periodic", Zs = ["0.62", "1.92"], more = "" } = {}) => `wayfile 1
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      existing
  premises  commercial
  inspection ${kind} 2026-03-05 {
    extent  "All circuits"
    ${observations}
  }
  supply {
    earthing  TN-S
    Ze        0.20 Ω
    Ipf       1.1 kA
  }
  board A "Front board" {
    fed-from  supply
    ${more}
    way 1 radial "Oven" {
      device  BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs  ${Zs[0]} Ω
      }
    }
    way 2 radial "Kiln" {
      device  BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs  ${Zs[1]} Ω
      }
    }
  }
}
`;

const found = (text: string, id: string) =>
  check(text).files.flatMap(({ findings }) => findings.filter((one) => one.check === `inspection/${id}`));

const named = 'observation 1 C2 "Loop too high" board A way 2 rule loop/zs-over-limit';

describe("an observation", () => {
  it("whose finding stands says nothing", () => {
    expect(found(schedule({ observations: named }), "observation-settled")).toEqual([]);
  });

  it("whose finding has gone is asked about once the reading is better, and not once it is remedied", () => {
    const better = { observations: named, Zs: ["0.62", "0.71"] };
    const [one, ...more] = found(schedule(better), "observation-settled");
    expect(more).toEqual([]);
    expect(one?.message).toMatch(/^Observation 1, C2: loop\/zs-over-limit finds nothing in A\/2 now\./);
    const done = { ...better, observations: `${named} remedied 2026-03-20` };
    expect(found(schedule(done), "observation-settled")).toEqual([]);
  });

  it("of another circuit than the finding's does not hold it", () => {
    const other = schedule({ observations: named.replace("way 2", "way 1") });
    expect(found(other, "observation-settled")).toHaveLength(1);
    expect(found(other, "finding-not-observed")[0]?.message).toMatch(/A\/2 loop\/zs-over-limit \(C2\)/);
  });

  it("may name the regulation a check rests on", () => {
    const clause = schedule({ observations: named.replace("loop/zs-over-limit", "411.4.4") });
    expect(found(clause, "finding-not-observed")).toEqual([]);
    expect(found(clause, "observation-settled")).toEqual([]);
  });
});

describe("a finding without an observation", () => {
  it("is named with the code that is usually given, and no code is written", () => {
    const [one] = found(schedule(), "finding-not-observed");
    expect(one?.severity).toBe("information");
    expect(one?.message).toMatch(
      /^One finding has no observation.*A\/2 loop\/zs-over-limit \(C2\)\. .* yours to say\.$/,
    );
    const [edit] = one?.fixes[0]?.edits ?? [];
    expect(edit?.text).toMatch(/^ {4}# observation C2\? "Zs 1\.92 Ω .*" board A way 2 rule loop\/zs-over-limit\n$/);
  });

  it("of more than four names four, and how many more", () => {
    const kiln = (id: number) => `way ${id} radial "Kiln" {
      device  BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs  1.92 Ω
      }
    }`;
    const said = (...ids: readonly number[]) =>
      found(schedule({ more: ids.map(kiln).join("\n") }), "finding-not-observed");
    expect(said(3, 4, 5)[0]?.message).toMatch(
      /^4 findings .*A\/5 loop\/zs-over-limit \(C2\), A\/2 loop\/zs-over-limit \(C2\)\. /,
    );
    expect(said(3, 4, 5, 6)[0]?.message).toMatch(/^5 findings .*A\/6 loop\/zs-over-limit \(C2\), and 1 more\. /);
  });

  it("is a warning under an outcome that a C1 or C2 rules out", () => {
    const called = (outcome: string, Zs = ["0.62", "1.92"]) =>
      found(schedule({ observations: `outcome ${outcome}`, Zs }), "finding-not-observed").map(
        ({ severity, message }) => [severity, /The outcome is satisfactory/.test(message)],
      );
    expect(called("satisfactory")).toEqual([["warning", true]]);
    expect(called("unsatisfactory")).toEqual([["information", false]]);
    // Above the limit of a cold reading alone, which is usually a C3.
    expect(called("satisfactory", ["0.62", "1.25"])).toEqual([["information", false]]);
  });

  it("is asked of a periodic inspection alone", () => {
    for (const kind of ["initial", "minor"]) expect(found(schedule({ kind }), "finding-not-observed")).toEqual([]);
  });

  it("is not asked of a circuit that was sampled out, nor of one whose observation names no rule", () => {
    const out = 'sampled-out board A way 2 "One circuit in two"';
    const text = schedule({ observations: out });
    const last = text.lastIndexOf("2026-03-05");
    const earlier = `${text.slice(0, last)}2016-03-05${text.slice(last + 10)}`;
    expect(found(earlier, "finding-not-observed")).toEqual([]);
    const plain = 'observation 1 C2 "Kiln circuit unsafe" board A way 2';
    expect(found(schedule({ observations: plain }), "finding-not-observed")).toEqual([]);
  });

  it("is not asked where a departure excuses the finding", () => {
    const more = 'departure loop/zs-over-limit "Feeder to be replaced in May"';
    expect(found(schedule({ more }), "finding-not-observed")).toEqual([]);
  });
});
