/** The conduit or trunking that takes the proposed cable: the one it runs in with others, or one of its own. */

import {
  type Cables,
  conduitFill,
  conduitSizes,
  isConduitSize,
  mostBends,
  type Run,
  smallestConduit,
  smallestTrunking,
  straightRun,
  trunkingFill,
} from "../calc/containment.ts";
import type { Fill } from "../calc/index.ts";
import { metres, plain } from "../calc/result.ts";
import { conductorsIn, conductorsOf, merged } from "../circuit/conductors.ts";
import type { WayStudy } from "../circuit/way.ts";
import { type ContainmentStudy, containmentOf, containmentsOf, containmentsOn } from "../conduits/containment.ts";
import { ContainmentStudy as Contained } from "../conduits/study.ts";
import type { Installation } from "../model/installation.ts";
import type { FactOf } from "../model/values.ts";
import { conduitRuns } from "../tables/conduit-runs.ts";
import { combine, type Source } from "../tables/source.ts";
import type { TextEdit } from "../text/lines.ts";
import { type Draft, decision } from "./draft.ts";

type Route = FactOf<"way", "route">;

/** Says what each enclosed stretch needs; returns the edits that write the size of a conduit of the way's own. */
export function containmentFor(
  { study, trial, installation }: { study: WayStudy; trial: WayStudy; installation?: Installation | undefined },
  draft: Draft,
): TextEdit[] {
  const before = study.facts.all("route");
  const seen = new Set<string>();
  return trial.facts.all("route").flatMap((route, index): TextEdit[] => {
    const name = route.args.in?.value;
    if (name !== undefined) {
      if (!seen.has(name) && installation) shared(name, trial, installation, draft);
      seen.add(name);
      return [];
    }
    const kind = route.args.kind?.value;
    const written = before[index];
    if (kind === "trunking") alone(route, trial, draft);
    if (kind !== "conduit" || !written) return [];
    const edits = ownConduit(route, written, trial, draft);
    // The route of a circuit type is that of other circuits too: what it needs is stated and not written.
    return written.segment === study.way.segment ? edits : [];
  });
}

/** With the cable proposed, and what the other ways bring. */
function shared(name: string, trial: WayStudy, installation: Installation, draft: Draft): void {
  const fact = containmentOf(trial.context, name);
  const all = [...containmentsOf(installation), ...installation.boards.flatMap(containmentsOn)];
  const before = all.find((one) => one.fact === fact);
  if (!before) return;
  const own = trial.facts
    .all("route")
    .filter(({ args }) => args.in?.value === name)
    .map((route) => ({ study: trial, route, ...conductorsOf(trial, route) }));
  const isOwn = ({ study: { way, context } }: (typeof before.contents)[number]): boolean =>
    way.id === trial.way.id && context === trial.context;
  const at = before.contents.findIndex(isOwn);
  const others = before.contents.filter((one) => !isOwn(one));
  const contents = [...others.slice(0, Math.max(at, 0)), ...own, ...others.slice(Math.max(at, 0))];
  fillVerdict(new Contained(before.fact, contents), draft);
}

function fillVerdict(study: ContainmentStudy, draft: Draft): void {
  const { name, title, fullest, wanted, isWhole, missing, contents } = study;
  if (!fullest) {
    draft.open.push(
      `How full ${name} is was not calculated: ${[...new Set(missing)].join("; ") || "nothing is known of it"}.`,
    );
    return;
  }
  const { total, room, fits } = fullest.fill;
  const least = isWhole ? "" : "at least ";
  const text = `${name}, ${title}: ${least}${plain(total.value, 1)} against ${plain(room.value)}`;
  const source = combine(total.source, room.source);
  draft.decisions.push(decision(heading, text, [...total.steps, ...room.steps], source));
  const ways = [...new Set(contents.map(({ study: { way } }) => way.id))].join(", ");
  if (fits && !isWhole) draft.open.push(`${name} may be fuller than this: ${whyNotWhole(study)}.`);
  if (fits) return;
  draft.ruledOut.push({
    candidate: title,
    why: `${least}${plain(total.value, 1)} with ways ${ways}, and it takes ${plain(room.value)}`,
    source,
  });
  draft.open.push(`${name} is too small for this cable beside the others. ${wantedText(wanted, study)}`);
}

const heading = "Containment";

const whyNotWhole = ({ missing }: ContainmentStudy): string =>
  missing.length > 0 ? [...new Set(missing)].join("; ") : "its length or bends are not stated";

function wantedText(wanted: ContainmentStudy["wanted"], { isWhole }: ContainmentStudy): string {
  if (!isWhole) return "The size needed is not known, since not all of it is stated.";
  if (wanted === undefined) return "No size in the tables holds them: divide them between two runs.";
  const size = typeof wanted === "number" ? `${wanted} mm conduit` : `${wanted.width} × ${wanted.depth} mm trunking`;
  return `Make it ${size}.`;
}

function alone(route: Route, trial: WayStudy, draft: Draft): void {
  const cables: readonly Cables[] = merged(conductorsIn(trial, route));
  const found = cables.length > 0 ? smallestTrunking(cables) : undefined;
  const fill = found && trunkingFill(cables, found);
  if (!found || !fill) {
    draft.open.push(
      `The trunking was not sized: ${conductorsOf(trial, route).missing ?? "no table holds this cable"}.`,
    );
    return;
  }
  const { total, room } = fill;
  const text = `${plain(found.width)} × ${plain(found.depth)} mm trunking, the smallest in the tables that does: ${plain(total.value, 1)} against ${plain(room.value)}`;
  draft.decisions.push(decision(heading, text, [...total.steps, ...room.steps], sourceOf(fill)));
}

/** A conduit of its own: the next size that holds it. */
function ownConduit(route: Route, written: Route, trial: WayStudy, draft: Draft): TextEdit[] {
  const cables: readonly Cables[] = merged(conductorsIn(trial, route));
  if (cables.length === 0) {
    draft.open.push(`The conduit was not sized: ${conductorsOf(trial, route).missing ?? "no conductor runs in it"}.`);
    return [];
  }
  const { run, assumed } = runOf(route);
  const size = smallestConduit(cables, run);
  const words = `${metres(run.length)} with ${plain(run.bends)} bend${run.bends === 1 ? "" : "s"} between draw-in points`;
  if (assumed)
    draft.open.push(`The conduit was taken at ${words}, as far as the guide's factors go: write its length and bends.`);
  if (size === undefined) {
    draft.open.push(`No conduit in the tables holds this cable over ${words}.`);
    return [];
  }
  const fill = conduitFill(cables, { ...run, size });
  if (!fill) return [];
  draft.decisions.push(
    decision(heading, `${size} mm conduit, ${words}`, [...fill.total.steps, ...fill.room.steps], sourceOf(fill)),
  );
  const below = conduitSizes[conduitSizes.indexOf(size) - 1];
  const tight = below && conduitFill(cables, { ...run, size: below });
  if (below && tight) {
    const why = `the cables in it make ${plain(tight.total.value, 1)}, and it takes ${plain(tight.room.value)}`;
    draft.ruledOut.push({ candidate: `${below} mm conduit`, why, source: sourceOf(tight) });
  }
  const now = written.args.size;
  const fits =
    now && isConduitSize(now.value) ? conduitFill(cables, { ...run, size: now.value })?.fits : now !== undefined;
  if (fits) return [];
  if (assumed) {
    if (now) draft.open.push(`${plain(now.value)} mm conduit would be too small then: ${size} mm holds it.`);
    return [];
  }
  const after = written.args.kind;
  if (now) return [{ start: now.start, end: now.end, text: `${size} mm` }];
  return after ? [{ start: after.end, end: after.end, text: ` ${size} mm` }] : [];
}

const sourceOf = ({ total, room }: Fill): Source => combine(total.source, room.source);

/** As it is stated; what is not is taken at the worst the tables have, as it should be built at worst. */
function runOf({ args }: Route): { readonly run: Run; readonly assumed: boolean } {
  const length = args.length?.value;
  const bends = args.bends?.value;
  if (length !== undefined && (bends !== undefined || length <= straightRun().value))
    return { run: { length, bends: bends ?? 0 }, assumed: false };
  const most = bends ?? mostBends().value;
  const longest = Math.max(
    ...conduitRuns.rows
      .filter(({ facts }) => facts.bends === most && facts.d20 !== null)
      .map(({ facts }) => facts.length),
  );
  return { run: { length: length ?? longest, bends: most }, assumed: true };
}
