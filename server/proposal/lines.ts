/** Devices and cables as the statements of a way, and the edits that put them there. */
import { kiloamps, milliamps, plain } from "../calc/result.ts";
import type { Way } from "../model/file.ts";
import type { Fact } from "../model/values.ts";
import { lineAfter, lineInBlock } from "../rules/writing.ts";
import type { TextEdit } from "../text/lines.ts";

export interface DeviceChoice {
  readonly standard: string;
  readonly curve?: "B" | "C" | "D";
  readonly rating: number;
  readonly class?: string;
  /** A. */
  readonly breaking?: number;
  /** A, for an RCBO. */
  readonly sensitivity?: number;
  readonly type?: "AC" | "A" | "F" | "B";
  readonly direction?: string;
}

export interface CableChoice {
  readonly construction: "singles" | "flat-twin" | "multicore" | "armoured" | "mineral" | "flex";
  readonly insulation: 70 | 90;
  readonly line: number;
  readonly cpc?: number;
  readonly cpcBy?: string;
  readonly cores?: number;
}

export function deviceText(device: DeviceChoice): string {
  const { standard, curve, rating, breaking, sensitivity, type, direction } = device;
  return [
    `device ${standard}`,
    curve ? `${curve}${plain(rating)}` : `${plain(rating)} A`,
    ...(device.class ? [device.class] : []),
    ...(breaking === undefined ? [] : [kiloamps(breaking)]),
    ...(sensitivity === undefined ? [] : [milliamps(sensitivity)]),
    ...(type ? [`type ${type}`] : []),
    ...(direction ? [direction] : []),
  ].join(" ");
}

export function cableText({ construction, insulation, line, cpc, cpcBy, cores }: CableChoice): string {
  return [
    `cable ${construction}`,
    ...(insulation === 90 ? ["90 °C"] : []),
    `line ${sizeText(line)}`,
    ...(cpc === undefined ? [] : [`cpc ${sizeText(cpc)}`]),
    ...(cpcBy ? [`cpc-by ${cpcBy}`] : []),
    ...(cores === undefined ? [] : [`cores ${cores}`]),
  ].join(" ");
}

/** Whole square millimetres below two are written with a decimal, as they are printed on the sheath. */
export const sizeText = (size: number): string => `${size === 1 ? "1.0" : plain(size)} mm²`;

/** Puts the two statements into a way: in the place of those that stand there, or as its first lines. */
export function editsFor(way: Way, device: string, cable: string): TextEdit[] {
  const oldDevice = way.facts.one("device");
  const oldCable = way.facts.one("cable");
  if (oldDevice && oldCable) return [...replaced(oldDevice, device), ...replaced(oldCable, cable)];
  if (oldDevice) return [...replaced(oldDevice, device), ...lineAfter(oldDevice, cable).edits];
  if (oldCable) return [...inBlock(way, device), ...replaced(oldCable, cable)];
  return [...inBlock(way, `${device}\n${cable}`)];
}

const inBlock = (way: Way, lines: string): readonly TextEdit[] =>
  lineInBlock(way.header, lines).flatMap(({ edits }) => edits);

/** Only what is said anew changes: the layout of a statement that says the same already stays. */
function replaced({ segment, start, end }: Fact, text: string): readonly TextEdit[] {
  const squeezed = segment.text.slice(start, end).replace(/\s+/g, " ");
  return squeezed === text ? [] : [{ start, end, text }];
}
