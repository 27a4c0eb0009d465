/** How the sides of a merge are called: what git calls them, with who last changed the file there, and when. */
import { git, isRevision } from "../git/run.ts";
import { type Style, styles } from "../merge/write.ts";
import { visible } from "../text/visible.ts";
import { pickedName } from "./picked.ts";

export interface SideLabels {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

interface Named {
  readonly path?: string;
  readonly base?: string;
  readonly ours?: string;
  readonly theirs?: string;
}

/** A git that knows no labels hands its placeholders over as they stand. */
const placeholder = /^%[SXY]$/;
const longest = 80;

/** `text`: of their side, by which it is found out who it is where git does not say. */
export async function labelsFor(
  { path, base, ours, theirs }: Named,
  text: string | undefined,
  folder: string,
): Promise<SideLabels> {
  const said = named(theirs) ?? mergedName();
  const picked =
    said === undefined && path !== undefined && text !== undefined ? await pickedName(path, text, folder) : undefined;
  const [here, there] = await Promise.all([
    label(named(ours) ?? (path === undefined ? "ours" : "HEAD"), path, folder),
    label(said ?? picked ?? "theirs", path, folder),
  ]);
  return { base: tidy(named(base) ?? "base"), ours: here, theirs: there };
}

/** What git calls a side; nothing where it does not say. */
export const named = (text: string | undefined): string | undefined =>
  text === undefined || text === "" || placeholder.test(text) ? undefined : text;

/** `git merge` leaves the names of what it merges in the surroundings of a driver. */
function mergedName(): string | undefined {
  const names = Object.entries(process.env).flatMap(([name, value]) =>
    /^GITHEAD_[0-9a-f]+$/.test(name) ? [value ?? ""] : [],
  );
  return names.length === 1 ? names[0] : undefined;
}

async function label(name: string, path: string | undefined, folder: string): Promise<string> {
  const [revision = ""] = name.split(/[\s:(]/);
  if (path === undefined || !isRevision(revision)) return tidy(name);
  // Whoever merged it wrote none of it.
  const found = await git(folder, ["log", "-1", "--no-merges", "--format=%an, %as", revision, "--", path]);
  const who = "out" in found ? found.out.toString("utf8").trim() : "";
  return tidy(who === "" ? name : `${name} (${who})`);
}

/** One line without signs that steer a terminal: a branch or an author may have any name. */
function tidy(text: string): string {
  const line = visible(text.replace(/\s+/g, " ")).trim();
  return line.length > longest ? `${line.slice(0, longest)}…` : line;
}

/** What the person set for all conflicts; with the common version between the two where nothing is set. */
export async function styleFor(folder: string): Promise<Style> {
  const found = await git(folder, ["config", "--get", "merge.conflictStyle"]);
  const set = "out" in found ? found.out.toString("utf8").trim() : "";
  return styles.find((style) => style === set) ?? "diff3";
}
