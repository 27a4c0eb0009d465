/** Which mutants are tried: so many of each room, the same for a seed. */
import { globSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { hash } from "./kept-results.ts";
import { type Mutation, mutationsOf } from "./mutations.ts";

/** What is sampled unless rooms are named: where a figure is wrong that somebody relies on. */
export const usualRooms = ["calc", "tables", "circuit", "readings", "boards", "rules"];

type Room = string;

/** Every folder of the server: whatever is named on the command line stands here. */
export const roomsOf = (root: string): readonly Room[] =>
  readdirSync(join(root, "server"), { withFileTypes: true })
    .filter((one) => one.isDirectory())
    .map(({ name }) => name)
    .sort();

interface Mutant extends Mutation {
  readonly room: Room;
  /** From the top of the repository. */
  readonly file: string;
  readonly source: string;
}

/** With the number by which it is switched on. */
export type Numbered = Mutant & { readonly number: number };

function allOf(room: Room, root: string): Mutant[] {
  return globSync(`server/${room}/**/*.ts`, { cwd: root })
    .sort()
    .flatMap((file) => {
      const source = readFileSync(join(root, file), "utf8");
      return mutationsOf(source).map((mutation): Mutant => ({ ...mutation, room, file, source }));
    });
}

/** Those of the lines and of the whole files that are named, however many. */
export function mutantsAt(places: readonly string[], root: string): Mutant[] {
  const isNamed = (mutant: Mutant) => places.includes(mutant.file) || places.includes(placeOf(mutant));
  return roomsOf(root).flatMap((room) => allOf(room, root).filter(isNamed));
}

/** In an order that each mutant has by itself, so that a change of one source moves no other in or out. */
export function sampleOf(
  room: Room,
  root: string,
  { size, seed, by }: { readonly size: number; readonly seed: number; readonly by: readonly string[] | undefined },
) {
  const seen = new Map<string, number>();
  return allOf(room, root)
    .filter((mutant) => !by || by.includes(mutant.by))
    .map((mutant) => {
      const told = `${seed} ${mutant.file} ${lineOf(mutant)} ${mutant.by}`;
      const count = (seen.get(told) ?? 0) + 1;
      seen.set(told, count);
      return { mutant, at: hash(told, String(count)) };
    })
    .toSorted((a, b) => (a.at < b.at ? -1 : 1))
    .slice(0, size)
    .map(({ mutant }) => mutant);
}

export const keyOf = ({ file, source, start, end, by }: Mutant): string =>
  `${file} ${hash(source)} ${start}-${end} ${by}`;

const placeOf = ({ source, start, file }: Mutant): string => `${file}:${source.slice(0, start).split("\n").length}`;

export const lineOf = ({ source, start }: Mutant): string =>
  source
    .slice(source.lastIndexOf("\n", start) + 1)
    .split("\n", 1)[0]
    ?.trim() ?? "";

export const described = (mutant: Mutant): string =>
  `${placeOf(mutant)}  ${mutant.source.slice(mutant.start, mutant.end)} → ${mutant.by || "(nothing)"}   in   ${lineOf(mutant)}`;
