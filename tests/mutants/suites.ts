/** Which tests could see that a file of a room is wrong: the nearest first, since one that fails is enough. */
import { basename, dirname } from "node:path";

export const rooms = ["calc", "tables", "rules", "readings"] as const;
export type Room = (typeof rooms)[number];

export interface Round {
  /** How the paths of its files begin. */
  readonly parts: readonly string[];
  /** Only tests of this name. */
  readonly named?: string;
}

const wide: Readonly<Record<Room, readonly (readonly string[])[]>> = {
  calc: [
    ["tests/rules/examples.test.ts", "tests/rules/mistakes.test.ts"],
    ["tests/calc/", "tests/boards/demand", "tests/boards/drop", "tests/boards/faults"],
    ["tests/rules/", "tests/readings/"],
    ["tests/tables/", "tests/diagnosis/predictions", "tests/proposal/", "tests/boards/"],
  ],
  tables: [
    ["tests/tables/", "tests/rules/examples.test.ts", "tests/rules/mistakes.test.ts"],
    ["tests/calc/", "tests/rules/"],
    ["tests/boards/", "tests/proposal/", "tests/diagnosis/"],
  ],
  rules: [["tests/rules/mistakes.test.ts"], ["tests/rules/"], ["tests/examples.test.ts", "tests/dangers.test.ts"]],
  readings: [
    ["tests/rules/examples.test.ts", "tests/rules/mistakes.test.ts"],
    ["tests/readings/"],
    ["tests/rules/", "tests/features/hover", "tests/features/inlay", "tests/reports/"],
    ["tests/merge/properties.test.ts", "tests/diagnosis/"],
  ],
};

/** Rounds that are quick; the rest is for what these do not see. */
export const nearRounds = 2;

export function suitesFor(room: Room, file: string): readonly Round[] {
  const name = basename(file, ".ts");
  const nearest: Round =
    room === "rules"
      ? { parts: ["tests/rules/examples.test.ts"], named: `${basename(dirname(file))}/${name}` }
      : { parts: [`tests/${room}/${name}`] };
  return [nearest, ...wide[room].map((parts) => ({ parts }))];
}
