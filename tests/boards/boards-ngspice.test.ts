import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { boardDrop, circuitDrop } from "../../server/boards/drop-path.ts";
import { faultLevels, leastFaults } from "../../server/boards/fault-levels.ts";
import { resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import type { Resistor } from "../../server/calc/network.ts";
import { dropPerAmpereMetre } from "../../server/calc/voltage-drop.ts";
import { startNgspice, startPhasors } from "../calc/ngspice.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";

/**
 * Installations of several boards, one behind another as they come, built as whole networks of conductors and solved by a
 * simulator: what arrives at each board and at the end of each circuit, and what a fault there lets flow.
 */

interface Feeder {
  readonly parent: number;
  readonly csa: number;
  readonly metres: number;
}
interface Circuit {
  readonly board: number;
  readonly csa: number;
  readonly metres: number;
  readonly Ib: number;
}
interface Tree {
  readonly three: boolean;
  /** Each feeds the board of its place in the list, counted from 1: board 0 is at the supply. */
  readonly feeders: readonly Feeder[];
  readonly circuits: readonly Circuit[];
  /** Hundreds of A, and hundredths of Ω. */
  readonly Ipf: number;
  readonly Ze: number;
}

const phases = [0, -120, 120] as const;
const U0 = 230;
const metres = fc.integer({ min: 2, max: 60 });

const trees = (three: boolean): fc.Arbitrary<Tree> =>
  fc
    .record({
      feeders: fc.array(fc.record({ parent: fc.nat(), csa: fc.constantFrom(6, 10, 16, 25), metres }), {
        minLength: 1,
        maxLength: 5,
      }),
      circuits: fc.array(
        fc.record({
          board: fc.nat(),
          csa: fc.constantFrom(1.5, 2.5, 4, 6),
          metres,
          Ib: fc.integer({ min: 1, max: 25 }),
        }),
        { minLength: 6, maxLength: 9 },
      ),
      Ipf: fc.integer({ min: 5, max: 90 }),
      Ze: fc.integer({ min: 5, max: 80 }),
    })
    .map(({ feeders, circuits, ...supply }) => ({
      ...supply,
      three,
      feeders: feeders.map((feeder, index) => ({ ...feeder, parent: feeder.parent % (index + 1) })),
      // A circuit on every board, so that every feeder carries something.
      circuits: circuits.map((circuit, index) => ({
        ...circuit,
        board: index <= feeders.length ? index : circuit.board % (feeders.length + 1),
      })),
    }));

const nameOf = (board: number): string => "ABCDEF"[board] ?? "";

/** A of all circuits on a board and on those behind it. */
function carried({ feeders, circuits }: Tree, board: number): number {
  const own = circuits.filter((circuit) => circuit.board === board).reduce((sum, { Ib }) => sum + Ib, 0);
  return feeders.reduce(
    (sum, { parent }, index) => (parent === board ? sum + carried({ feeders, circuits } as Tree, index + 1) : sum),
    own,
  );
}

function written(tree: Tree): string {
  const { three, feeders, circuits, Ipf, Ze } = tree;
  const cable = (csa: number, kind: string) => `cable ${kind} 70 °C line ${csa} mm² cpc ${csa} mm²`;
  const board = (at: number): string => {
    const fed = feeders.flatMap(({ parent, csa, metres: length }, index) =>
      parent === at
        ? `way F${index + 1} feeder "Feeder" {\nfeeds ${nameOf(index + 1)}\n${cable(csa, "armoured")}\nlength ${length} m\nIb ${carried(tree, index + 1)} A\n}`
        : [],
    );
    const final = circuits.flatMap(({ board: on, csa, metres: length, Ib }, index) =>
      on === at
        ? `way C${index} radial "Load" {\n${three ? "phase three\n" : ""}${cable(csa, "multicore")}\nlength ${length} m\nIb ${Ib} A\n}`
        : [],
    );
    const from = at === 0 ? "supply" : nameOf(feeders[at - 1]?.parent ?? 0);
    return [`board ${nameOf(at)} "Board" {`, `fed-from ${from}`, ...fed, ...final, "}"].join("\n");
  };
  const supply = `supply {\nearthing TN-S\n${three ? "phases three\n" : ""}Ze ${Ze / 100} Ω\nIpf ${Ipf / 10} kA\n}`;
  const boards = [0, ...feeders.map((_, index) => index + 1)].map(board);
  return `wayfile 1\ninstallation "Works" {\nstandard BS 7671:2018+A2:2022\n${supply}\n${boards.join("\n")}\n}\n`;
}

/** Every length of cable, with the place it comes from and the place it goes to. */
const cablesOf = ({ feeders, circuits }: Tree) => [
  ...feeders.map((feeder, index) => ({ ...feeder, from: `b${feeder.parent}`, to: `b${index + 1}` })),
  ...circuits.map((circuit, index) => ({ ...circuit, from: `b${circuit.board}`, to: `c${index}` })),
];

describe.each([
  ["one phase", false],
  ["three phases, balanced", true],
])("installations on %s", (_, three) => {
  let phasors: Awaited<ReturnType<typeof startPhasors>>;
  let ohmsBetween: Awaited<ReturnType<typeof startNgspice>>;
  beforeAll(async () => {
    [phasors, ohmsBetween] = [await startPhasors(), await startNgspice()];
  });
  const lines = three ? phases : phases.slice(0, 1);

  it("drop at every board and circuit what the simulator finds", async () => {
    await fc.assert(
      fc.asyncProperty(trees(three), async (tree) => {
        const perMetre = (csa: number) => {
          const question = {
            construction: "multicore",
            insulation: 70,
            method: "C",
            loaded: three ? 3 : 2,
            csa,
          } as const;
          return (dropPerAmpereMetre(question)?.value ?? Number.NaN) / (three ? Math.sqrt(3) : 2);
        };
        const sources = lines.map((angle, phase) => `V${phase} l${phase}b0 0 DC 0 AC ${U0} ${angle}`);
        const cables = cablesOf(tree).flatMap(({ from, to, csa, metres: length }, index) =>
          [...lines.map((__, phase) => `l${phase}`), "n"].map(
            (core) => `R${index}${core} ${core}${from} ${core}${to} ${length * perMetre(csa)}`,
          ),
        );
        const loads = tree.circuits.flatMap(({ Ib }, index) =>
          lines.map((angle, phase) => `I${index}x${phase} l${phase}c${index} nc${index} DC 0 AC ${Ib} ${angle}`),
        );
        const voltage = await phasors([...sources, "Vn nb0 0 DC 0 AC 0", ...cables, ...loads]);
        const arrived = (place: string): number => {
          const [line, neutral] = [voltage(`l0${place}`), voltage(`n${place}`)];
          return Math.hypot(line.real - neutral.real, line.across - neutral.across);
        };
        const installation = installationOf(written(tree));
        for (const [index] of [0, ...tree.feeders].entries()) {
          const node = nodeOf(installation, nameOf(index));
          const { drop, whole } = boardDrop(node);
          expect(whole).toBe(true);
          expect(drop.value).toBeCloseTo(100 - (arrived(`b${index}`) / U0) * 100, 6);
        }
        for (const [index, { board }] of tree.circuits.entries()) {
          const node = nodeOf(installation, nameOf(board));
          const own = circuitDrop(wayOf(node, `C${index}`))?.drop.value ?? Number.NaN;
          expect(boardDrop(node).drop.value + own).toBeCloseTo(100 - (arrived(`c${index}`) / U0) * 100, 6);
        }
      }),
      { numRuns: 25 },
    );
  });

  it("let flow at every end, to neutral and to earth, what the simulator finds", async () => {
    await fc.assert(
      fc.asyncProperty(trees(three), async (tree) => {
        const network = (heat: number): Resistor[] =>
          cablesOf(tree).flatMap(({ from, to, csa, metres: length }) =>
            ["l", "n", "e"].map((core) => ({
              from: `${core}${from}`,
              to: `${core}${to}`,
              ohms: length * (resistancePerMetre(csa)?.value ?? Number.NaN) * heat,
            })),
          );
        // A three-phase figure is that of the lines; the neutral is taken like one of them.
        const Z = (U0 / (tree.Ipf * 100)) * (three ? 2 : 1);
        const through = async (core: "n" | "e", place: string, heat: number): Promise<number> => {
          const source = { from: "source", to: "lb0", ohms: core === "n" ? Z : tree.Ze / 100 };
          const fault = { from: `l${place}`, to: `${core}${place}`, ohms: 0 };
          return ohmsBetween([source, ...network(heat), fault], "source", `${core}b0`);
        };
        const installation = installationOf(written(tree));
        for (const [index] of [0, ...tree.feeders].entries()) {
          const levels = faultLevels(nodeOf(installation, nameOf(index)));
          expect((levels?.neutral.value ?? 0) * (await through("n", `b${index}`, 1))).toBeCloseTo(U0, 6);
          expect((levels?.earth?.value ?? 0) * (await through("e", `b${index}`, 1))).toBeCloseTo(U0, 6);
        }
        for (const [index, { board }] of tree.circuits.entries()) {
          const node = nodeOf(installation, nameOf(board));
          const { neutral, earth } = leastFaults(node, wayOf(node, `C${index}`));
          const least = U0 * 0.95;
          if (!three) expect((neutral?.value ?? 0) * (await through("n", `c${index}`, 1.2))).toBeCloseTo(least, 6);
          expect((earth?.value ?? 0) * (await through("e", `c${index}`, 1.2))).toBeCloseTo(least, 6);
        }
      }),
      { numRuns: 8 },
    );
  });
});

it("three lines shorted at a board let flow what the simulator finds", async () => {
  const phasors = await startPhasors();
  await fc.assert(
    fc.asyncProperty(trees(true), fc.nat(), async (tree, pick) => {
      const place = pick % (tree.feeders.length + 1);
      const Z = U0 / (tree.Ipf * 100);
      const line = (phase: number) => [
        `V${phase} s${phase} 0 DC 0 AC ${U0} ${phases[phase]}`,
        `Rs${phase} s${phase} l${phase}b0 ${Z}`,
        ...cablesOf(tree).map(
          ({ from, to, csa, metres: length }, index) =>
            `R${index}p${phase} l${phase}${from} l${phase}${to} ${length * (resistancePerMetre(csa)?.value ?? Number.NaN)}`,
        ),
      ];
      const short = [`Vx l0b${place} l1b${place} DC 0 AC 0`, `Vy l1b${place} l2b${place} DC 0 AC 0`];
      const voltage = await phasors([...[0, 1, 2].flatMap(line), ...short]);
      const [source, board] = [voltage("s0"), voltage("l0b0")];
      const flows = Math.hypot(source.real - board.real, source.across - board.across) / Z;
      const levels = faultLevels(nodeOf(installationOf(written(tree)), nameOf(place)));
      expect((levels?.three?.value ?? 0) / flows).toBeCloseTo(1, 6);
    }),
    { numRuns: 25 },
  );
});
