import type { BoardDrop } from "../boards/drop-path.ts";
import { milliamps } from "../calc/result.ts";
import { breakingDecision } from "./breaking.ts";
import type { Construction } from "./cable.ts";
import { type ChosenCable, sizesOf } from "./choose-cable.ts";
import { type Draft, decision } from "./draft.ts";
import { upstreamNote } from "./drop.ts";
import { energyNote } from "./energy.ts";
import type { DeviceChoice } from "./lines.ts";
import type { RcdChoice } from "./rcd.ts";

/** The temperature (°C) terminals are made for without a word. */
const ordinary = 70;

/** All that was settled before the cable was looked for. */
interface Settled {
  readonly construction: Construction;
  readonly above?: BoardDrop;
  readonly rcd: RcdChoice;
  readonly device: DeviceChoice;
}

/** Writes down what the chosen cable was compared with, and what could not be judged. */
export function record(
  { candidate, trial, verdicts }: ChosenCable,
  settled: Settled,
  { decisions, open }: Draft,
): void {
  const { rcd, device } = settled;
  const { steps, source } = candidate;
  decisions.push(decision("Size of the cable", sizesOf(candidate.choice), steps, source));
  for (const { title, holds, text, steps, source } of verdicts) {
    if (holds === undefined) open.push(text);
    else decisions.push(decision(title, text, steps, source));
  }
  const upstream = upstreamNote(trial, settled.above);
  if (upstream && verdicts.some(({ title, holds }) => title === "Voltage drop" && holds)) open.push(upstream);
  if (settled.construction.insulation > ordinary && settled.construction.source) {
    open.push("The cable is rated at 90 °C: make sure that the terminals at both ends are made for it.");
  }
  const energy = energyNote(trial);
  if (energy) open.push(energy);
  decisions.push(breakingDecision(trial, open));
  const rcdText =
    device.sensitivity === undefined
      ? `none in the device: ${rcd.words}`
      : `${milliamps(device.sensitivity)} type ${device.type} in the device, ${rcd.words}`;
  decisions.push(decision("RCD", rcdText, [], rcd.source));
  open.push(...rcd.open);
  const recorded = [...trial.deadTests, ...trial.liveTests].length > 0;
  if (recorded) open.push("Readings are recorded here: they are of what was installed, not of what is proposed.");
}
