/** Devices and cables as the statements of a way, and the edits that put them there. */
import { amps, kiloamps, milliamps, plain } from "../calc/result.ts";
import type { Cable } from "../circuit/way.ts";
import type { Way } from "../model/file.ts";
import type { Fact, FactOf, Span } from "../model/values.ts";
import { lineAfter, lineInBlock } from "../rules/common/writing.ts";
import { familyOf } from "../tables/standard-values.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";

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
  /** An RCD of the way's own beside a device that is none, as its statement. */
  readonly beside?: string;
}

export interface CableChoice {
  readonly construction: Cable["construction"];
  readonly insulation: 70 | 90;
  readonly line: number;
  readonly cpc?: number;
  readonly cpcBy?: string;
  readonly cores?: number;
  /** What else is written of it whatever its size: how many lie in parallel, and that it is fire-resisting. */
  readonly besides?: string;
  /** A cable type of the schedule with figures of its own, by its name. */
  readonly type?: string;
  /** The statement stays as it is written: its own figures are of this one size. */
  readonly kept?: true;
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

export function cableText({ construction, insulation, line, cpc, cpcBy, cores, besides, type }: CableChoice): string {
  if (type !== undefined) return `cable ${type}`;
  return [
    `cable ${construction}`,
    ...(insulation === 90 ? ["90 °C"] : []),
    `line ${sizeText(line)}`,
    ...(cpc === undefined ? [] : [`cpc ${sizeText(cpc)}`]),
    ...(cpcBy ? [`cpc-by ${cpcBy}`] : []),
    ...(cores === undefined ? [] : [`cores ${cores}`]),
    ...(besides ? [besides] : []),
  ].join(" ");
}

/** Whole square millimetres below two are written with a decimal, as they are printed on the sheath. */
export const sizeText = (size: number): string => `${size === 1 ? "1.0" : plain(size)} mm²`;

/**
 * Puts the two statements into a way: what differs in those that stand there, or new lines at its top. A line that the
 * way has from its circuit type is not touched: where another is proposed, the way gets one of its own. Without a cable
 * the line that says it stays as it is.
 */
export function editsFor({ facts, header }: Way, device: DeviceChoice, cable: CableChoice | undefined): TextEdit[] {
  const oldDevice = facts.one("device");
  const oldCable = facts.one("cable");
  const changed = [
    { old: oldDevice, edits: oldDevice && deviceEdits(oldDevice, device), text: deviceText(device) },
    ...(cable ? [{ old: oldCable, edits: oldCable && cableEdits(oldCable, cable), text: cableText(cable) }] : []),
  ].filter(({ edits }) => edits?.length !== 0);
  const isOwn = ({ old }: { old: Fact | undefined }) => old?.segment === header.segment;
  const fresh = [
    ...changed
      .filter((line) => !isOwn(line))
      .map(({ old, edits, text }) => (old && edits ? rewrittenLine(old, edits) : text)),
    ...(device.beside ? [device.beside] : []),
  ];
  const below = oldDevice?.segment === header.segment && !oldCable ? fresh.splice(0) : [];
  return [
    ...changed.filter(isOwn).flatMap(({ edits }) => edits ?? []),
    ...(oldDevice ? below.flatMap((line) => lineAfter(oldDevice, line).edits) : []),
    ...(fresh.length > 0 ? lineInBlock(header, fresh.join("\n")).flatMap(({ edits }) => edits) : []),
  ];
}

/** A line of the circuit type as it would read in the way, with what else is stated in it. */
function rewrittenLine({ segment, start, end }: Fact, edits: readonly TextEdit[]): string {
  const own = edits.map((edit) => ({ ...edit, start: edit.start - start, end: edit.end - start }));
  return applyEdits(segment.text.slice(start, end), own).trim().replace(/\s+/g, " ");
}

/** One argument of a statement: where it stands, if it does, and what it should say. */
interface Slot {
  readonly span: Span | undefined;
  /** Nothing where what stands there is right already, or nothing is to stand there. */
  readonly text: string | undefined;
  /** The word before it, needed only where it is new. */
  readonly label?: string;
}

const slot = (span: Span | undefined, same: boolean, text: string | undefined, label?: string): Slot => ({
  span,
  text: same ? undefined : text,
  ...(label ? { label } : {}),
});

function deviceEdits({ args, start, end }: FactOf<"way", "device">, device: DeviceChoice): TextEdit[] {
  // Little that is written of one kind of device is true of another.
  if (familyOf(args.standard.value) !== familyOf(device.standard)) return [{ start, end, text: deviceText(device) }];
  const { standard, curve, rating, breaking, sensitivity, type } = args;
  const size = curve?.rating ?? rating?.value;
  const sizeSame = size === device.rating && curve?.curve === device.curve;
  return argumentEdits(standard.end, [
    slot(standard, standard.value === device.standard, device.standard),
    slot(curve ?? rating, sizeSame, device.curve ? `${device.curve}${plain(device.rating)}` : amps(device.rating)),
    slot(breaking, breaking?.value === device.breaking, written(device.breaking, kiloamps)),
    slot(sensitivity, sensitivity?.value === device.sensitivity, written(device.sensitivity, milliamps)),
    slot(type, type?.value === device.type, device.type, "type"),
  ]);
}

function cableEdits(fact: FactOf<"way", "cable">, cable: CableChoice): TextEdit[] {
  const { construction, insulation, line, neutral, cpc } = fact.args;
  if (cable.kept || (cable.type !== undefined && fact.args.use?.value === cable.type)) return [];
  // A cable type is described elsewhere; another cable than that is written out here.
  if (!construction || cable.type !== undefined) return [{ start: fact.start, end: fact.end, text: cableText(cable) }];
  const hot = (insulation?.value ?? ordinary) === cable.insulation;
  return argumentEdits(construction.end, [
    slot(construction, construction.value === cable.construction, cable.construction),
    slot(insulation, hot, `${cable.insulation} °C`),
    slot(line, line?.value === cable.line, sizeText(cable.line), "line"),
    slot(neutral, neutral === undefined || neutral.value === cable.line, sizeText(cable.line)),
    slot(cpc, cpc?.value === cable.cpc, written(cable.cpc, sizeText), "cpc"),
  ]);
}

const ordinary = 70;
const written = (value: number | undefined, write: (value: number) => string): string | undefined =>
  value === undefined ? undefined : write(value);

/** What is new stands behind the argument before it; what stands there keeps its place. */
function argumentEdits(from: number, slots: readonly Slot[]): TextEdit[] {
  let after = from;
  return slots.flatMap(({ span, text, label }): TextEdit[] => {
    if (span) after = span.end;
    if (text === undefined) return [];
    if (span) return [{ start: span.start, end: span.end, text }];
    return [{ start: after, end: after, text: ` ${label ? `${label} ` : ""}${text}` }];
  });
}

/** A statement as it is written, in one line and single-spaced. */
export const statementText = ({ segment, start, end }: Fact): string =>
  segment.text.slice(start, end).trim().replace(/\s+/g, " ");
