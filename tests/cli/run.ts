/** Runs a command in this process, in a folder of its own, and keeps what it wrote. */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll } from "vitest";
import { type Ran, type RunOptions, runAt } from "../helpers/run-command.ts";

export type { Ran } from "../helpers/run-command.ts";

export class Folder {
  readonly path = realpathSync(mkdtempSync(join(tmpdir(), "wayfile-")));

  constructor(files: Readonly<Record<string, string | Uint8Array>>) {
    folders.push(this.path);
    for (const [name, content] of Object.entries(files)) this.write(name, content);
  }

  at(name: string): string {
    return join(this.path, name);
  }

  write(name: string, content: string | Uint8Array): void {
    mkdirSync(dirname(this.at(name)), { recursive: true });
    writeFileSync(this.at(name), content);
  }

  run(...args: readonly string[]): Promise<Ran> {
    return this.runWith({}, ...args);
  }

  runWith(options: RunOptions, ...args: readonly string[]): Promise<Ran> {
    return runAt(this.path, options, args);
  }
}

export const runIn = (cwd: string, ...args: readonly string[]): Promise<Ran> => runAt(cwd, {}, args);

export const runWithInput = (cwd: string, input: string, ...args: readonly string[]): Promise<Ran> =>
  runAt(cwd, { input }, args);

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** The frames of one check in a report. Other checks may find more in the same sample as they are added. */
export function framesOf(check: string, report: string): string {
  const frames = report.split("\n\n").filter((frame) => frame.split("\n")[0]?.endsWith(`  ${check}`));
  return frames.map((frame) => `${frame}\n`).join("\n");
}

/** An installation round the ways of a sample. */
export function schedule(ways: string, { before = "", stage = "design" } = {}): string {
  return `wayfile 1
${before}installation "Heron Wharf" {
  standard  BS 7671:2018+A2:2022
  stage     ${stage}
  work      existing
  premises  commercial

  supply {
    earthing  TN-S
    Ze        0.30 Ω
    Ipf       1.2 kA
  }

  board A "Wharf board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A

${ways}
  }
}
`;
}

/** Its loop impedance is too high for its device, at either stage. */
export const faultyWay = `    way 1 radial "Water heater" {
      device  BS EN 60898 B32 6 kA
      live 2026-03-05 {
        Zs  1.52 Ω
      }
    }`;
