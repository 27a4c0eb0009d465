import { laterRule } from "../../circuit/describe.ts";
import { ownRcd, placeSpot } from "../../circuit/places.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fact } from "../../model/values.ts";
import { factSpot, type Spot, valueSpot, wayRule } from "../frame/rule.ts";

/** “Berths 1 to 4”, “Pitches, north row”, “Bollard 3 & 4”, and not “Pitch 7, 16 A”. */
const namesSeveral = (title: string): boolean =>
  /\d\s*(?:to|and|[-–—&+,/])\s*\d+\b(?!\s*(?:A|V|W|kW|m|mm)\b)/i.test(title) ||
  /\b(?:berths|moorings|pitches|plots|hook-?ups)\b/i.test(title);

interface Several {
  readonly spot: Spot;
  readonly words: string;
  /** The sockets are not counted: what is written may be of one. */
  readonly asked?: true;
}

function severalOf(study: WayStudy, place: Fact): Several | undefined {
  const points = study.facts.one("points");
  const count = points?.args.count.value;
  if (points && count !== undefined)
    return count > 1 ? { spot: factSpot(points), words: `${count} sockets share` } : undefined;
  if (study.isRing) return { spot: factSpot(place), words: "The sockets of a ring share" };
  const [path] = study.facts.all("run");
  const drawn = study.runs?.places.size;
  if (path && drawn !== undefined && drawn > 1)
    return { spot: factSpot(path), words: `The runs have ${drawn} points`, asked: true };
  const title = study.way.header.args.title;
  return title && namesSeveral(title.value)
    ? { spot: valueSpot(study.way.header, title), words: `“${title.value}” names several`, asked: true }
    : undefined;
}

const cure = "each needs its own device and RCD: give each a way, or write the pillar as a board";

export default wayRule({
  id: "place/several-sockets",
  severity: "error",
  since: "0.1",
  title: "Several sockets of a caravan park or marina share one device.",
  why: "Each socket of a pitch or berth needs its own overcurrent device and its own RCD. Several on one way have them only if they are in the pillar: then write the pillar as a board.",
  clauses: ["708.533.1", "708.415.1", "709.533.1", "709.531.2"],
  examples: [
    {
      bad: `way 1 radial "Berths 1 to 4" {
             ^^^^^^^^^^^^^^^
  device       BS EN 61009 C32 6 kA 30 mA type A
  serves       sockets
  place        marina
}`,
      good: `way 1 radial "Berth 1" {
  device       BS EN 61009 C32 6 kA 30 mA type A
  serves       sockets
  place        marina
}`,
    },
    {
      bad: `way 1 radial "Berths 1 to 4" {
  device       BS EN 61009 C32 6 kA 30 mA type A
  points       4
  ^^^^^^^^^^^^^^
  serves       sockets
  place        marina
}`,
      good: `way 1 radial "Berth 1" {
  device       BS EN 61009 C32 6 kA 30 mA type A
  points       1
  serves       sockets
  place        marina
}`,
    },
  ],
  check(study, report) {
    const need = ownRcd(study);
    const several = need && study.uses.size === 1 ? severalOf(study, placeSpot(study, need.place)) : undefined;
    if (!need || !several) return;
    const later = laterRule(study);
    const message = several.asked
      ? `${several.words}: if this way supplies more than one socket, ${cure}. If it is one, write points 1.`
      : `${several.words} one device; ${cure}.`;
    const severity = later.severity ?? (several.asked ? "warning" : undefined);
    report(several.spot, {
      message: `${message}${later.words}`,
      ...(severity ? { severity } : {}),
      source: need.source,
      related: study.device ? [{ spot: factSpot(study.device.fact), message: "The device the sockets share." }] : [],
    });
  },
});
