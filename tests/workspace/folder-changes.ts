/** A folder of schedules that share boards and instruments, and what may happen to its files. */
import type { Files } from "./files.ts";

const way = (id: number, device: string, Zs: string) => `  way ${id} radial "Circuit ${id}" {
    device  ${device}
    behind  east
    cable   flat-twin line 2.5 mm² cpc 1.5 mm²
    route   clipped method C
    length  18 m
    serves  appliance
    Ib      8 A
    dead 2026-03-04 with M1 {
      R1+R2       0.32 Ω
      insulation  500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ
      polarity    ok
    }
    live 2026-03-05 with M1 {
      Zs  ${Zs}
    }
  }
`;

const board = (name: string, fed: string) => `board ${name} "Board ${name}" {
  fed-from     ${fed}
  main-switch  BS EN 60947-3 100 A
  rcd east     BS EN 61008 63 A 30 mA type A
  Zdb          0.31 Ω
  Ipf          0.9 kA

${way(1, "BS EN 60898 B16 6 kA", "0.63 Ω")}
${way(2, "BS EN 60898 B32 6 kA", "1.6 Ω")}
  way 9 spare
}
`;

const schedule = (title: string, uses: readonly string[], own: string) => `wayfile 1
${uses.map((use) => `use "${use}"\n`).join("")}installation "${title}" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      new
  premises  commercial

  supply {
    earthing  TN-S
    Ze        0.30 Ω
    Ipf       1.1 kA
    tails     25 mm²
  }

${own}}
`;

const meters = `wayfile 1
instrument M1 "Multifunction tester" {
  serial    "MF-1"
  due       2026-11-03
  accuracy  loop 3 % 3 digits
}
`;

const feeder = `  way 7 feeder "Annexe" {
    device  BS EN 60898 C40 6 kA
    cable   swa line 10 mm² cpc 10 mm²
    length  22 m
    feeds   S
  }
`;

export const startingFolder: Readonly<Record<string, string>> = {
  "slip.ways": schedule("Slipway", ["shared.ways", "meters.ways"], board("A", "supply")),
  "loft.ways": schedule("Sail loft", ["meters.ways", "shared.ways"], ""),
  "shared.ways": `wayfile 1\n${board("S", "A")}`,
  "meters.ways": meters,
  "alone.ways": `wayfile 1\n${board("L", "supply")}`,
};

export interface Change {
  readonly kind: string;
  readonly make: () => Promise<void> | void;
}

type Next = () => number;
const pick = <T>(items: readonly T[], next: Next): T => items[Math.floor(next() * items.length)] as T;

const names = ["slip.ways", "loft.ways", "shared.ways", "meters.ways", "alone.ways", "quay.ways", "far.ways"];

/** What may be typed in the place of something else, or between lines. */
const swaps: readonly (readonly [RegExp, readonly string[]])[] = [
  [/Zs +\S+ Ω/g, ["Zs  0.63 Ω", "Zs  2.9 Ω", "Zs  Ω", "Zs  >200 Ω"]],
  [/Zdb +\S+ Ω/g, ["Zdb  0.31 Ω", "Zdb  0.9 Ω", "Zdb"]],
  [/Ze +\S+ Ω/g, ["Ze  0.30 Ω", "Ze  0.85 Ω", "Ze 0.3"]],
  [/Ipf +\S+ kA/g, ["Ipf  1.1 kA", "Ipf  9.4 kA"]],
  [/tails +\d+ mm²/g, ["tails  25 mm²", "tails  16 mm²"]],
  [/due +\S+/g, ["due  2026-11-03", "due  2025-01-31", "due"]],
  [/accuracy +loop.*/g, ["accuracy  loop 3 % 3 digits", "accuracy  loop 9 % 9 digits", ""]],
  [/earthing +TN\S+/g, ["earthing  TN-S", "earthing  TN-C-S"]],
  [/fed-from +\S+/g, ["fed-from  supply", "fed-from  A", "fed-from  S"]],
  [/with M\d/g, ["with M1", "with M2"]],
  [/type \w+/g, ["type A", "type AC"]],
  [/feeds +\w/g, ["feeds  S", "feeds  A"]],
  [/board \w/g, ["board A", "board S", "board L"]],
  [/use "[\w.]+"/g, ['use "shared.ways"', 'use "meters.ways"', 'use "quay.ways"', 'use "slip.ways"', "# nothing"]],
  [/stage +\w+/g, ["stage  tested", "stage  design"]],
  [/installation "[\w ]+"/g, ['installation "Slipway"', 'installation "Quay"']],
  [/wayfile \d/g, ["wayfile 1", "wayfile 1", "wayfile 2"]],
  [/\}\n/g, ["}\n", "\n", "}\n}\n", `}\n${way(4, "BS EN 61009 B16 6 kA 30 mA type A", "0.7 Ω")}`, `}\n${feeder}`]],
  [/\{\n/g, ["{\n", "\n", '{\n  departure fault/breaking-capacity-exceeded "It stays"\n', "{\n  way 3 ra\n"]],
  [/\n\n/g, ["\n\n", "\n", "\n# a remark\n"]],
];

/** One swap somewhere in a text. */
export function mutated(
  text: string,
  next: Next,
): { readonly at: number; readonly end: number; readonly text: string } {
  for (;;) {
    const [pattern, words] = pick(swaps, next);
    const matches = [...text.matchAll(pattern)];
    if (matches.length === 0) continue;
    const match = pick(matches, next);
    return { at: match.index, end: match.index + match[0].length, text: pick(words, next) };
  }
}

const placeAt = (text: string, offset: number) => {
  const before = text.slice(0, offset).split("\n");
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
};

function edit(files: Files, name: string, next: Next): void {
  const text = files.text(name) ?? "";
  const change = mutated(text, next);
  const range = { start: placeAt(text, change.at), end: placeAt(text, change.end) };
  files.edit(name, { range, text: change.text }, text.slice(0, change.at) + change.text + text.slice(change.end));
}

/** Something that may happen next. */
export function changesOf(files: Files, next: Next): Change {
  const open = files.names.filter((name) => files.isOpen(name));
  const closed = files.names.filter((name) => !files.isOpen(name));
  const missing = names.filter((name) => !files.names.includes(name));
  const roll = next();
  const text = () => files.text(pick(files.names, next)) ?? "";
  if (roll < 0.55 && open.length > 0) {
    const name = pick(open, next);
    return { kind: `edit ${name}`, make: () => edit(files, name, next) };
  }
  if (roll < 0.7 && closed.length > 0) {
    const name = pick(closed, next);
    return { kind: `open ${name}`, make: () => files.open(name) };
  }
  if (roll < 0.76 && open.length > 0) {
    const name = pick(open, next);
    const saved = files.text(name);
    return {
      kind: `save and close ${name}`,
      make: async () => {
        await files.onDisk(name, saved);
        files.close(name);
      },
    };
  }
  if (roll < 0.82 && closed.length > 0) {
    const name = pick(closed, next);
    const change = mutated(files.text(name) ?? "", next);
    const before = files.text(name) ?? "";
    return {
      kind: `change ${name} on disk`,
      make: () => files.onDisk(name, before.slice(0, change.at) + change.text + before.slice(change.end)),
    };
  }
  if (roll < 0.9 && missing.length > 0) {
    const name = pick(missing, next);
    const content = text();
    return { kind: `create ${name}`, make: () => files.onDisk(name, content) };
  }
  if (closed.length > 1) {
    const name = pick(closed, next);
    const to = pick(missing, next);
    const content = files.text(name);
    return {
      kind: roll < 0.95 || to === undefined ? `remove ${name}` : `rename ${name} to ${to}`,
      make: async () => {
        await files.onDisk(name, undefined);
        if (roll >= 0.95 && to !== undefined) await files.onDisk(to, content);
      },
    };
  }
  const name = pick(files.names, next);
  return files.isOpen(name)
    ? { kind: `edit ${name}`, make: () => edit(files, name, next) }
    : { kind: `open ${name}`, make: () => files.open(name) };
}
