import type { Threshold } from "./dead-test-practice.ts";

const practice = (value: number, unit: string, of: string): Threshold => ({
  value,
  unit,
  source: { ref: `Common practice, ${of}`, standing: "practice" },
});

/** What readings of a circuit are weighed by when they are compared with each other and against what could be wrong. */
export const diagnosisPractice = {
  /** A low-resistance reading is out by at most this share of it and this many Ω. */
  accuracyShare: practice(0.02, "", "accuracy of low-resistance meters"),
  accuracyDigits: practice(0.02, "Ω", "accuracy of low-resistance meters"),
  /** Times its accuracy by which one reading may leave what a sound circuit gives. */
  oneReading: practice(1.5, "", "readings compared with each other"),
  /** Normal deviate of the chance in a thousand that sound readings as a whole would leave it so far. */
  allReadings: practice(3.09, "", "readings compared with each other"),
  /** Cable drawn and cable laid usually agree within this share. */
  lengthShare: practice(0.15, "", "length of cable as laid"),
  /** By how much a protective conductor may leave the ratio of its size before it is remarkable. */
  cpcShare: practice(0.1, "", "resistance of conductors as made"),
  /** A reading that should be open and is not, or the reverse, counts like one so many deviations out. */
  openDeviations: practice(20, "", "readings compared with each other"),
  /** What one fitted number costs at the least, in the same measure as squared deviations. */
  fittedNumber: practice(2, "", "readings compared with each other"),
  /** What it costs to suppose one live conductor of a cable unlike the other, and each size beyond the next to the written. */
  unlikelySize: practice(6, "", "conductors of one cable"),
  /** What it costs to suppose what another test shows not to be so: a line that is open and carried the loop test. */
  contradicted: practice(12, "", "readings compared with each other"),
  /** What it costs to suppose a second thing besides, such as metal that carries the loop where the conductor is open. */
  besides: practice(3, "", "readings compared with each other"),
  /** What a rarer cause costs beside one that reads the same and is met far more often. */
  rarer: practice(2.5, "", "what testers find at points that read open"),
  /** A loop agrees with what the board and the cable give within this share, and within this many Ω. */
  loopShare: practice(0.2, "", "loop impedance against its parts"),
  loopLeast: practice(0.1, "Ω", "loop impedance against its parts"),
  /** Explanations whose scores are nearer than this cannot be distinguished. */
  alikeScore: practice(4, "", "readings compared with each other"),
  /**
   * How far an explanation must stand before a sound circuit, and before a meter that reads all of a part high or low,
   * where every reading is within what is accepted. Of 6000 sound rings read with a meter's whole errors and drawn 10 %
   * out, leg by leg, none came beyond 1 by a cable across, or beyond 5 by a slip for which nothing is fitted.
   */
  pattern: practice(6, "", "readings compared with each other"),
  /** Squared deviations below which no such explanation can stand so far before: none is looked for. */
  patternLeast: practice(12, "", "readings compared with each other"),
  /** What it costs to suppose that nothing was found at any point of a radial and nobody looked at the link before writing. */
  unnoticed: practice(6, "", "links at the board"),
  /** What it costs to suppose that a round was read a second time with link and probes where they were. */
  readTwice: practice(5, "", "rounds of a continuity test"),
  /** An explanation is worth a word from this share of the weight. */
  leastWeight: practice(0.02, "", "readings compared with each other"),
  /** A test distinguishes two explanations if they differ by so many times the meter's accuracy. */
  telling: practice(2, "", "readings compared with each other"),
  /** Least and most a poor joint or contact is looked for between, Ω. */
  jointLeast: practice(0.02, "Ω", "poor joints"),
  jointMost: practice(30, "Ω", "poor joints"),
  /** Least and most cable of a spur or bridge nobody drew, m. */
  cableLeast: practice(1, "m", "cables that are not drawn"),
  cableMost: practice(60, "m", "cables that are not drawn"),
  /** Least and most of a path by metalwork, Ω. */
  metalLeast: practice(0.005, "Ω", "parallel paths"),
  metalMost: practice(2, "Ω", "parallel paths"),
  /** Most that leads which were not nulled put on a reading, Ω. */
  leadsMost: practice(0.5, "Ω", "test leads"),
} as const satisfies Record<string, Threshold>;
