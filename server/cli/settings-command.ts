/** `wayfile settings`: what a repository has set for itself, and where each of it comes from. */
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { Option } from "commander";
import { holdsOn } from "../settings/apply.ts";
import { noSettings, type Settings, settingsFile } from "../settings/settings.ts";
import type { AddCommand } from "./commands.ts";
import { exit } from "./exit.ts";
import { shownPath } from "./files.ts";
import { folderOf, type House, Houses } from "./house.ts";
import { jsonText, refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";

interface SettingsOptions {
  readonly why?: boolean;
  readonly format: "text" | "json";
}

export const addSettings: AddCommand = (program, terminal, finish) => {
  program
    .command("settings")
    .description("Show what this repository has set for itself.")
    .argument("[PATH]", "a file or folder whose settings are meant; this folder if left out")
    .option("--why", "where each setting comes from, and what goes before it")
    .addOption(new Option("--format <FORMAT>", "how to show them").choices(["text", "json"]).default("text"))
    .addHelpText(
      "after",
      `
The settings are in ${settingsFile}, the nearest one from the folder upwards, as far as the top of the
repository. An option on the command line goes before them. “wayfile schema settings” is their
JSON schema. Exit code 2 means that they have faults.

Examples:
  wayfile settings
  wayfile settings --why sites/north/house.ways
`,
    )
    .action((path: string | undefined, options: SettingsOptions) => finish(settingsCommand(path, options, terminal)));
};

function settingsCommand(path: string | undefined, { why, format }: SettingsOptions, terminal: Terminal): number {
  if (path !== undefined && !existsSync(resolve(terminal.cwd, path)))
    return refuse(`There is no file or folder “${path}”.`, terminal);
  const houses = new Houses(terminal.cwd, terminal.today());
  const house = houses.in(path === undefined ? terminal.cwd : folderOf([path], undefined, terminal.cwd));
  terminal.err(sentences(houses.failures));
  if (format === "json") terminal.out(jsonText({ path: house ? shown(house, terminal) : null, ...asJson(house) }));
  else terminal.out(sentences(described(house, why ?? false, terminal)));
  return houses.failures.length > 0 ? exit.failed : exit.clean;
}

const shown = ({ path }: House, { cwd }: Terminal): string => shownPath(cwd, path);

const asJson = (house: House | undefined) => {
  const { failLevel, maxWarnings, only, skip, leaveOut, columns, suppress, raise } = house?.settings ?? noSettings;
  return {
    failLevel: failLevel ?? "error",
    maxWarnings: maxWarnings ?? null,
    only: only ?? null,
    skip,
    leaveOut,
    columns,
    suppress: suppress.map(({ check, reason, files, until, line }) => ({
      check,
      reason,
      files: files ?? null,
      until: until ?? null,
      line: line + 1,
    })),
    raise: Object.fromEntries(raise),
  };
};

function described(house: House | undefined, why: boolean, terminal: Terminal): string[] {
  const settings = house?.settings ?? noSettings;
  const place = house ? shown(house, terminal) : undefined;
  const from = (key: string, option?: string): string => {
    if (!why) return "";
    const line = settings.lines.get(key);
    const before = option ? `; ${option}` : "";
    return line === undefined ? `  (not set${before})` : `  (${place}:${line + 1}${before})`;
  };
  return [
    place === undefined ? `There is no ${settingsFile} from here upwards: everything is as it comes.` : `From ${place}`,
    `failLevel    ${settings.failLevel ?? "error"}${from("failLevel", "--fail-level goes before it")}`,
    `maxWarnings  ${settings.maxWarnings ?? "any number"}${from("maxWarnings", "--max-warnings goes before it")}`,
    `only         ${settings.only?.join(", ") ?? "all checks"}${from("only", "--only narrows it")}`,
    `skip         ${settings.skip.join(", ") || "none"}${from("skip", "--skip adds to it")}`,
    `leaveOut     ${settings.leaveOut.join(", ") || "nothing"}${from("leaveOut", "a file that is named is checked all the same")}`,
    ...settings.columns.map((pair) => `columns      ${pair}${from("columns", "--column goes before it")}`),
    ...[...settings.raise].map(([check, level]) => `raise        ${check} to ${level}${from("raise")}`),
    ...settings.suppress.map((one) => suppression(one, place, why, terminal)),
  ];
}

function suppression(
  one: Settings["suppress"][number],
  place: string | undefined,
  why: boolean,
  terminal: Terminal,
): string {
  const { check, reason, files, until, line } = one;
  const where = files ? ` in ${files.join(", ")}` : "";
  const day = until === undefined ? "" : holdsOn(one, terminal.today()) ? ` until ${until}` : `, which ended ${until}`;
  return `suppress     ${check}${where}${day}  “${reason}”${why ? `  (${place}:${line + 1})` : ""}`;
}
