/** A device and a cable in the few words of a row. */
import { metres, milliamps, plain } from "../calc/result.ts";
import { countWords } from "../circuit/cable.ts";
import { isOwnRcd } from "../circuit/rcds.ts";
import type { WayStudy } from "../circuit/way.ts";

/** `B32`, `30 A`; where there is no device, that. */
export function briefDevice({ device }: WayStudy): string {
  if (!device) return "no device";
  const { curve, rating, standard } = device;
  if (rating === undefined) return standard;
  return curve && !/^\d/.test(curve) ? `${curve}${plain(rating)}` : `${plain(rating)} A`;
}

/** `B32 · 30 mA A`, `30 A BS 3036`. */
export function deviceText(study: WayStudy): string {
  const { device, rcds } = study;
  if (!device) return "";
  const brief = briefDevice(study);
  const named = brief.endsWith(" A") ? ` ${device.standard}` : "";
  const own = rcds.find(isOwnRcd);
  const rcd = own ?? rcds[0];
  const type = rcd?.type ? ` ${rcd.type}` : "";
  return `${brief}${named}${rcd ? ` · ${own ? "" : "behind "}${milliamps(rcd.sensitivity)}${type}` : ""}`;
}

/** `2.5/1.5 mm² flat-twin, 38 m`. */
export function cableText({ cable, length }: WayStudy): string {
  const size = cable
    ? `${countWords(cable.parallel.line)}${plain(cable.line)}${cable.cpc === undefined ? "" : `/${plain(cable.cpc)}`} mm² ${cable.construction}`
    : "";
  return [size, length ? metres(length.value) : ""].filter((one) => one !== "").join(", ");
}
