/** The texts of the conformance suite: every word as its row shows it, and what can be wrong, by its part of the specification. */
import type { WordRow } from "../../grammar/params.ts";
import { type BlockKind, vocabulary } from "../../grammar/vocabulary.ts";
import { broken } from "./broken.ts";
import { mutated } from "./mutated.ts";
import { sound } from "./sound.ts";

export interface Case {
  readonly name: string;
  readonly text: string;
}

/** What stands round a block of each kind. */
const wrapped: Readonly<Record<BlockKind, (lines: string) => string>> = {
  file: (lines) => `wayfile 1\n${lines}\n`,
  installation: (lines) => `wayfile 1\ninstallation "Boat shed" {\n${lines}\n}\n`,
  supply: (lines) => `wayfile 1\ninstallation "Boat shed" {\nsupply {\n${lines}\n}\n}\n`,
  supplyLive: (lines) => `wayfile 1\ninstallation "Boat shed" {\nsupply {\nlive 2026-03-05 {\n${lines}\n}\n}\n}\n`,
  board: (lines) => `wayfile 1\nboard A {\n${lines}\n}\n`,
  boardDead: (lines) => `wayfile 1\nboard A {\ndead 2026-03-04 {\n${lines}\n}\n}\n`,
  boardLive: (lines) => `wayfile 1\nboard A {\nlive 2026-03-05 {\n${lines}\n}\n}\n`,
  way: (lines) => `wayfile 1\nboard A {\nway 1 radial {\n${lines}\n}\n}\n`,
  dead: (lines) => `wayfile 1\nboard A {\nway 1 ring {\ndead 2026-03-04 {\n${lines}\n}\n}\n}\n`,
  live: (lines) => `wayfile 1\nboard A {\nway 1 radial {\nlive 2026-03-05 {\n${lines}\n}\n}\n}\n`,
  inspection: (lines) =>
    `wayfile 1\ninstallation "Boat shed" {\ninspection periodic 2026-03-05 {\n${lines}\n}\nboard A {\n}\n}\n`,
  instrument: (lines) => `wayfile 1\ninstrument M1 {\n${lines}\n}\n`,
  containment: (lines) => `wayfile 1\nboard A {\ncontainment C1 conduit 25 mm {\n${lines}\n}\n}\n`,
  circuitType: (lines) => `wayfile 1\ncircuit-type lights {\n${lines}\n}\n`,
};

/** Each word of the vocabulary as its example writes it. */
function words(): Case[] {
  return Object.entries(vocabulary).flatMap(([kind, rows]) =>
    Object.entries(rows as Readonly<Record<string, WordRow>>)
      .filter(([word]) => word !== "wayfile")
      .map(([word, { example }]) => ({ name: `${kind}: ${word}`, text: wrapped[kind as BlockKind](example) })),
  );
}

const inBlocks = (group: Readonly<Record<string, readonly [BlockKind, string]>>): Case[] =>
  Object.entries(group).map(([name, [kind, lines]]) => ({ name, text: wrapped[kind](lines) }));

/** By the file they are kept in. */
export const groups: Readonly<Record<string, readonly Case[]>> = {
  words: words(),
  sound: [...inBlocks(sound.lines), ...Object.entries(sound.files).map(([name, text]) => ({ name, text }))],
  broken: [...inBlocks(broken.lines), ...Object.entries(broken.files).map(([name, text]) => ({ name, text }))],
  braces: mutated(),
};
