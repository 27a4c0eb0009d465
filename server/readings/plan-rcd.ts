/** The tests of one RCD: those an edition requires, and what its type lets a tester ask further. */
import { rcdLimit } from "../calc/practice.ts";
import { type RcdWindow, rcdTime, rcdTripBand } from "../calc/rcd-time.ts";
import { type Calculated, milliamps, plain } from "../calc/result.ts";
import { rcdName } from "../circuit/describe.ts";
import type { Rcd, WayStudy } from "../circuit/way.ts";
import type { Fact } from "../model/values.ts";
import type { Edition } from "../tables/editions.ts";
import { type Bound, bound, type PlannedTest, recordedAs, word, writtenName } from "./planned.ts";
import { buttonOnWay, type RcdTest, rcdTestsOfWay, worstOfLatest } from "./rcd-tests.ts";

/** The times an edition asks of an RCD, then its button. */
export function planRcd(
  rcd: Rcd,
  edition: Edition | undefined,
  tests: readonly RcdTest[],
  button: Fact | undefined,
): PlannedTest[] {
  const additional = rcd.sensitivity <= rcdLimit("additional").value && !rcd.delayed;
  const name = rcd.point === undefined ? rcdName(rcd) : `RCD at ${rcd.point}, ${rcdName(rcd)}`;
  const at = rcd.point === undefined ? [] : [`at ${writtenName(rcd.point)}`];
  const place = rcd.point === undefined ? {} : { place: rcd.point };
  const asked = (additional ? [0.5, 1, 5] : [1]).flatMap((multiple) => {
    const window = edition && rcdTime({ standard: rcd.standard, delayed: rcd.delayed, multiple, edition });
    return window?.required ? [{ multiple, window }] : [];
  });
  const times = (asked.length > 0 ? asked : [{ multiple: 1, window: undefined }]).map(
    ({ multiple, window }): PlannedTest => {
      const fact = worstOfLatest(tests.filter((one) => one.multiple?.value === multiple))?.fact;
      return {
        step: "rcd",
        live: true,
        name: `${name} at ${multiple === 0.5 ? "½" : plain(multiple)} × IΔn`,
        unit: multiple < 1 ? "" : "ms",
        bounds: windowBounds(multiple, window),
        write: ["rcd", ...at, milliamps(rcd.sensitivity), `${plain(multiple)}x`].join(" "),
        recorded: recordedAs(fact, "time") ?? recordedAs(fact, "noTrip"),
        ...place,
      };
    },
  );
  return [...times, { ...word("rcd", `Test button, ${name}`, button, ["test-button", ...at].join(" ")), ...place }];
}

/** Of the RCDs of a way each has its own tests; a button beside a time is that of the RCD that was timed. */
export function planRcdOfWay(rcd: Rcd, study: WayStudy): PlannedTest[] {
  const tests = rcdTestsOfWay(study).filter(({ device }) => device?.fact === rcd.fact);
  return planRcd(rcd, study.context.edition, tests, buttonOnWay(rcd, study));
}

export interface RcdTestByWaveform {
  /** `with a.c. at 1 × IΔn`. */
  readonly name: string;
  readonly text: string;
  /** By the edition of the schedule. */
  readonly required: boolean;
  readonly figures: readonly Calculated[];
}

export const waveformWords = { sinusoidal: "a.c.", pulsating: "pulsating d.c.", smooth: "smooth d.c." } as const;

/**
 * What an instrument can ask of an RCD: with a.c. the times of each multiple; of pulsating and smooth d.c. what its type
 * detects; and the current it trips at as the test current rises, by waveform.
 */
export function testsByWaveform(rcd: Rcd, edition: Edition | undefined): RcdTestByWaveform[] {
  const { standard, delayed, sensitivity, type } = rcd;
  const times = [0.5, 1, 5].flatMap((multiple): RcdTestByWaveform[] => {
    const window = edition && rcdTime({ standard, delayed, multiple, edition });
    if (!window) return [];
    const bounds = windowBounds(multiple, window).map(({ text }) => text);
    const halves = multiple === 1 ? "; the longer of both half cycles counts" : "";
    return [
      {
        name: `with a.c. at ${multiple === 0.5 ? "½" : plain(multiple)} × IΔn`,
        text: `${bounds.join(", ")}${halves}`,
        required: window.required,
        figures: [window.least, window.greatest].flatMap((one) => one ?? []),
      },
    ];
  });
  const ramps = (["sinusoidal", "pulsating", "smooth"] as const).flatMap((waveform): RcdTestByWaveform[] => {
    const band = type && rcdTripBand(type, sensitivity, waveform);
    if (!band) return [];
    return [
      {
        name: `rising, with ${waveformWords[waveform]}`,
        text: `trips between ${milliamps(band.least.value)} and ${milliamps(band.greatest.value)}`,
        required: false,
        figures: [band.least, band.greatest],
      },
    ];
  });
  return [...times, ...ramps];
}

function windowBounds(multiple: number, window: RcdWindow | undefined): Bound[] {
  const least = bound("least", window?.least, "ms").map((one) =>
    multiple < 1 ? { ...one, text: `no trip within ${one.text.replace("at least ", "")}` } : one,
  );
  return [...least, ...bound("most", window?.greatest, "ms")];
}
