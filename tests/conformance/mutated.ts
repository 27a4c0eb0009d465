/** One brace too few or too many at each place of a small schedule, and of one that is laid out badly. */
import type { Case } from "./inputs.ts";

const schedule = `wayfile 1
instrument M1 "Tester" {
  due  2026-11-03
}

installation "Boat shed" {
  standard  BS 7671:2018+A2:2022

  supply {
    earthing  TN-S
    Ze        0.30 Ω
  }

  board A "Main" {
    fed-from  supply

    way 1 ring "Sockets" {
      device  BS EN 60898 B32 6 kA
      dead 2026-03-04 with M1 {
        ends  r1 0.31 Ω  rn 0.31 Ω  r2 0.31 Ω
      }
      live 2026-03-05 with M1 {
        Zs  0.41 Ω
      }
    }
    way 2 feeder { feeds B }
    way 3 spare
  }

  board B "Loft" {
    fed-from  A
    way 1 radial "Lights" {
      length  18 m
    }
  }
}
`;

const flat = schedule.replace(/^ +/gm, "");

const changes: Readonly<Record<string, (line: string) => string | undefined>> = {
  "lost }": (line) => (/^\s*\}\s*$/.test(line) ? "" : undefined),
  "lost {": (line) => (/\{\s*$/.test(line) ? line.replace(/\s*\{\s*$/, "") : undefined),
  "extra } in column 1": (line) => (line.trim() === "" ? undefined : `${line}\n}`),
  "extra } as the line": (line) => (/^\s+\S/.test(line) ? `${line}\n${/^\s*/.exec(line)?.[0]}}` : undefined),
  "extra {": (line) => (/^\s+[A-Za-z][^{}]*$/.test(line) ? `${line} {` : undefined),
};

const ofText = (text: string, called: string, kinds: readonly string[]): Case[] => {
  const lines = text.split("\n");
  return kinds.flatMap((kind) =>
    lines.flatMap((line, index) => {
      const made = changes[kind]?.(line);
      return made === undefined
        ? []
        : [{ name: `${called}, ${kind}, line ${index + 1}`, text: lines.with(index, made).join("\n") }];
    }),
  );
};

export const mutated = (): Case[] => [
  ...ofText(schedule, "laid out", Object.keys(changes)),
  ...ofText(flat, "not indented", ["lost }", "lost {", "extra {"]),
];
