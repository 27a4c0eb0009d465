/**
 * The worksheet as one HTML file that is filled in on a phone or tablet, without a network. Its groups follow the order
 * of the trade for the whole of what is tested: every dead test, then the supply goes on, then every live one.
 */
import { createHash } from "node:crypto";
import { deviceName } from "../circuit/describe.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import { sheetFileVersion } from "../entry/sheet-file.ts";
import { placeName, type Slot, slotName, slotsOf } from "../entry/slots.ts";
import type { Installation } from "../model/installation.ts";
import { printAddress } from "../readings/address.ts";
import { factsOf } from "../readings/instruments.ts";
import type { TestStep } from "../readings/planned.ts";
import { boardNotes, goLive, originNotes, proveDead, wayNotes } from "../reports/worksheet/steps.ts";
import { html } from "../text/html.ts";
import { fillScript } from "./fill-script.ts";
import { fillStyle } from "./fill-style.ts";

interface Field {
  readonly at: string;
  readonly test: string;
  readonly name: string;
  readonly unit: string;
  readonly words: readonly string[];
  readonly expected: string;
  readonly limit: string;
  readonly most?: number;
  readonly least?: number;
  /** Base units of one of the unit. */
  readonly factor: number;
  readonly last: string;
  /** Not on the path from field to field: filled in where somebody chooses to. */
  readonly optional: boolean;
}

interface Group {
  readonly title: string;
  readonly about: string;
  readonly stage: "dead" | "live";
  readonly notes: readonly string[];
  readonly fields: readonly Field[];
}

interface FillSheet {
  readonly version: number;
  readonly title: string;
  readonly file: string;
  readonly base: string;
  readonly caution: { readonly dead: string; readonly live: string };
  /** The instruments of the schedule, with the highest insulation resistance each can show, MΩ. */
  readonly instruments: readonly { readonly name: string; readonly title: string; readonly range?: number }[];
  readonly groups: readonly Group[];
}

export function fillSheetHtml(installation: Installation, file: string, base: string): string {
  const sheet = fillSheetOf(installation, file, base);
  const data = JSON.stringify(sheet).replace(
    /[<\u2028\u2029]/g,
    (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
  const policy = `default-src 'none'; script-src '${hashOf(fillScript)}'; style-src '${hashOf(fillStyle)}'; base-uri 'none'; form-action 'none'`;
  return html`<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${html.asItStands(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${sheet.title}</title>
<style>${html.asItStands(fillStyle)}</style>
</head>
<body>
<noscript><p>This sheet is filled in with the help of a script. Open it in a browser: a preview of files does not run it.</p></noscript>
<main></main>
<script type="application/json" id="sheet">${html.asItStands(data)}</script>
<script>${html.asItStands(fillScript)}</script>
</body>
</html>
`.text;
}

const hashOf = (text: string): string => `sha256-${createHash("sha256").update(text).digest("base64")}`;

export function fillSheetOf(installation: Installation, file: string, base: string): FillSheet {
  const slots = slotsOf(installation).filter(({ planned, offered }) => planned !== undefined || offered);
  const byPlace = [...Map.groupBy(slots, ({ place }) => placeName(place)).values()];
  const groups = (["dead", "live"] as const).flatMap((stage) =>
    byPlace.flatMap((own) => {
      const here = own.filter(({ block }) => block === stage);
      return here.length === 0 ? [] : [groupOf(installation, here, stage)];
    }),
  );
  return {
    version: sheetFileVersion,
    title: `Worksheet to fill in: ${installation.head.title}`,
    file,
    base,
    caution: { dead: proveDead, live: goLive },
    instruments: instrumentsOf(installation),
    groups,
  };
}

function groupOf(installation: Installation, slots: readonly Slot[], stage: Group["stage"]): Group {
  const [first] = slots;
  const { board = "", way } = first?.place ?? {};
  const study = studyOf(installation, board, way);
  const steps = new Set(slots.flatMap(({ planned }) => planned?.step ?? []));
  const notesOf = (step: TestStep): string[] =>
    study ? wayNotes(study, step) : first?.place.board === undefined ? originNotes(step) : boardNotes(step);
  const title = study
    ? `${board}/${way} ${study.way.title}`
    : first?.place.board === undefined
      ? "The origin"
      : `Board ${board}`;
  return {
    title,
    about: study?.device ? deviceName(study.device) : "",
    stage,
    notes: [...new Set([...steps].flatMap(notesOf))],
    fields: slots.map(fieldOf),
  };
}

function studyOf({ boards }: Installation, board: string, way: string | undefined): WayStudy | undefined {
  const place = boards.find((one) => one.board.head.name === board);
  const found = place?.board.ways.find(({ id }) => id === way);
  return place && found && studyWay(found, place.context);
}

const factors: Readonly<Record<string, number>> = { MΩ: 1e6, kA: 1e3, ms: 1e-3, mA: 1e-3 };

function fieldOf(slot: Slot): Field {
  const { planned, place, unit, words } = slot;
  const bounds = planned?.bounds ?? [];
  const most = bounds.find(({ sense }) => sense === "most");
  const least = bounds.find(({ sense }) => sense === "least");
  const { board, way } = place;
  const at =
    board === undefined
      ? "supply"
      : printAddress({ place: way === undefined ? { of: "board", board } : { of: "way", board, way }, blocks: [] });
  return {
    at,
    test: slotName(slot),
    name: planned?.name ?? slot.line,
    unit,
    // A figure is typed; that a device did not trip is its word, and typed too.
    words: unit === "" ? words : [],
    expected: planned?.expected?.text ?? "",
    limit: bounds.map(({ text, source }) => (source.standing === "memory" ? `${text} (from memory)` : text)).join(", "),
    ...(most ? { most: most.value } : {}),
    ...(least ? { least: least.value } : {}),
    factor: factors[unit] ?? 1,
    last: planned?.recorded?.text ?? "",
    // The far point decides: others are read where somebody looks for a poor joint.
    optional: planned?.place !== undefined || planned === undefined,
  };
}

function instrumentsOf({ names }: Installation): FillSheet["instruments"] {
  return [...names.instruments].map(([name, [fact]]) => {
    const top =
      fact &&
      factsOf(fact)
        ?.all("range")
        .find(({ args }) => args.of.value === "insulation")?.args.top;
    return { name, title: fact?.args.title?.value ?? "", ...(top ? { range: top.value / 1e6 } : {}) };
  });
}
