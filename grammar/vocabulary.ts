/**
 * Every word of the language, by the kind of block it stands in.
 *
 * This is the one place where a word is spelt. The binder's messages, the typed model, completion, hovers,
 * the colouring grammar and the language reference are derived from it; the formatter writes a block's statements in
 * the order they have here.
 */
import * as list from "./choices.ts";
import {
  anyName,
  choice,
  count,
  date,
  define,
  label,
  many,
  multiple,
  often,
  once,
  opt,
  path,
  productStandard,
  quantity,
  reading,
  ref,
  roughTime,
  rule,
  shorthand,
  text,
  verdict,
  type WordRow,
  wiringStandard,
} from "./params.ts";

/** Words of the record that may stand in almost every block. */
const record = {
  departure: often(
    { rule: rule("a regulation or a check's id"), reason: text("the reason") },
    {
      key: ["rule"],
      remark: true,
      means: "A rule is knowingly not followed here, with the reason.",
      background:
        "It suppresses that check in this block, is listed in every summary, and is itself reported when it no longer suppresses anything.",
      example: 'departure 411.3.3 "Sockets reached by skilled persons only, risk assessment kept on site"',
    },
  ),
  query: often(
    { text: text("the question") },
    {
      key: ["text"],
      remark: true,
      means: "A question put to this block by whoever reviews it.",
      background: "Open questions are counted and listed until they are answered below.",
      example: 'query "Why a type C device here?"',
    },
  ),
  answer: often(
    { text: text("the answer") },
    {
      follows: "query",
      remark: true,
      means: "The answer to the question above.",
      example: 'answer "Transformer inrush, see the maker\'s data"',
    },
  ),
  note: often(
    { text: text("the remark") },
    { key: ["text"], remark: true, means: "A remark for the next reader.", example: 'note "Board relabelled"' },
  ),
  detail: often(
    { name: anyName("what it is"), text: text("what is recorded") },
    {
      key: ["name"],
      remark: true,
      means: "A fact of your own: an asset number, a drawing, a photograph, a maker. No check judges it.",
      background:
        "Any name will do. Where the schedule declares a `field` of this name, what is recorded is compared with that.",
      example: 'detail asset "DB-014"',
    },
  ),
} as const;

/** What may stand in every block of tests, besides the tests. */
const testRecord = {
  "struck-out": once(
    { by: label("by", text("a name or initials")), on: opt(date("the day")), reason: text("why it does not count") },
    {
      remark: true,
      means: "These tests do not count, for this reason. They are kept and shown, and no check reads them.",
      background:
        "For tests that were made on another circuit, with a faulty instrument, or entered under the wrong way.",
      example: 'struck-out by "R.M." 2026-03-06 "Read on way 6"',
    },
  ),
  note: record.note,
  detail: record.detail,
} as const;

const field = often(
  {
    name: anyName("the name of the detail"),
    blocks: many(label("in", choice(list.fieldBlocks, "where it may stand"))),
    required: opt(choice(list.fieldNeeds, "that it must be there")),
    kind: opt(label("kind", choice(list.fieldKinds, "what is recorded"))),
    values: opt(many(label("one-of", text("what may be recorded")))),
    title: opt(text("what it is")),
  },
  {
    key: ["name"],
    means: "A detail of your own that this schedule keeps: where it stands, whether it must, and what may be recorded.",
    background:
      "Without any field every detail is accepted. With one, details of other names are pointed to as slips of the pen.",
    example: 'field asset in board way required "The number on the asset label"',
  },
);

/** What a paper shows of whoever signs, besides name and day. */
const signatory = {
  position: opt(label("position", text("their position"))),
  firm: opt(label("firm", text("the firm"))),
  address: opt(label("address", text("the firm's address"))),
  phone: opt(label("phone", text("a telephone number"))),
  registration: opt(label("registration", text("the firm's registration, with whom and its number"))),
} as const;

const signedRoughly = {
  by: label("by", text("a name or initials")),
  on: opt(date("the day")),
  around: opt(roughTime("about when")),
  ...signatory,
} as const;

const signedOnDay = { by: label("by", text("a name or initials")), on: opt(date("the day")), ...signatory } as const;

const signatories = {
  designed: once(signedRoughly, {
    signs: true,
    means: "Who signed for the design, and when; the nearest signature counts.",
    example: 'designed by "K.A." 2026-01-20',
  }),
  installed: once(signedRoughly, {
    signs: true,
    means: "Who signed for the installation work, and when it was finished.",
    example: 'installed by "D.O." 2026-02-27',
  }),
  tested: once(signedOnDay, {
    signs: true,
    means: "Who signed for the tests, and when.",
    background:
      "A signature answers for the tests of its own visit and not for those of an earlier one: a block of tests may name its own tester, and an inspection signs for its days.",
    example: 'tested by "K.A." 2026-03-04',
  }),
} as const;

const alsoDesigned = often(signedRoughly, {
  key: ["by"],
  signs: true,
  means: "A second designer, who answers for a part of the design.",
  example: 'also-designed by "T.E." 2026-01-22 position "Fire alarm designer"',
});

const cableParams = {
  construction: choice(list.constructions, "how the cable is made"),
  insulation: opt(quantity("temperature", "the insulation's rated temperature")),
  line: label("line", quantity("csa", "the size of the line conductor")),
  neutral: opt(label("neutral", quantity("csa", "the size of the neutral, if it differs"))),
  cpc: opt(label("cpc", quantity("csa", "the size of the protective conductor"))),
  cpcBy: opt(label("cpc-by", choice(list.cpcMeans, "what is used as the protective conductor"))),
  material: opt(choice(list.materials, "the conductor material")),
  wire: opt(choice(list.wires, "whether the conductors are solid or stranded")),
  fire: opt(choice(list.fireBehaviours, "whether it keeps working in a fire")),
  cores: opt(label("cores", count("the number of cores"))),
  parallel: opt(
    label(
      "parallel",
      count(
        "how many of them lie in parallel, all of one size, length and make, as unequal ones are not judged: sizes and figures are those of one",
      ),
    ),
  ),
  cpcs: opt(label("cpcs", count("how many protective conductors, if not one with each of those in parallel"))),
  arranged: opt(label("arranged", text("how single-core cables in parallel lie so that they share the current"))),
  carries: opt(
    label("carries", quantity("rating", "what it carries as it lies, at 30 °C and alone, by its maker or your book")),
  ),
  drop: opt(label("drop", quantity("dropPer", "its voltage drop per ampere and metre"))),
  r1: opt(label("r1", quantity("perMetre", "the resistance of a line conductor per metre at 20 °C"))),
  r2: opt(label("r2", quantity("perMetre", "the resistance of its protective conductor per metre at 20 °C"))),
  r1Hot: opt(
    label("r1-hot", quantity("perMetre", "the resistance of a line conductor per metre, hot at its rated current")),
  ),
  r2Hot: opt(label("r2-hot", quantity("perMetre", "the resistance of its protective conductor per metre, hot"))),
  x: opt(label("x", quantity("perMetre", "the reactance of one conductor per metre"))),
  x2: opt(label("x2", quantity("perMetre", "the reactance of its protective conductor per metre, if it differs"))),
  Icw: opt(label("Icw", quantity("fault", "the short-time current busbar trunking withstands"))),
  withstandTime: opt(label("for", quantity("duration", "the time for which it withstands that, if not 1 s"))),
  Icc: opt(label("Icc", quantity("fault", "what it withstands behind the device it was tested with"))),
  by: opt(label("by", text("the book or letter these figures stand in"))),
} as const;

/** The same reading on each line of a three-phase circuit, beside the one that counts. */
const onEachLine = <Q extends "conductor" | "loop">(of: Q) => ({
  L1: opt(label("L1", reading(of, "the same on line 1"))),
  L2: opt(label("L2", reading(of, "the same on line 2"))),
  L3: opt(label("L3", reading(of, "the same on line 3"))),
});

/** Figures of a device from a book or its maker, which go before the tables. */
const deviceFiguresRow = () =>
  often(
    {
      standard: productStandard("the standard on the device"),
      curve: opt(shorthand("type and rated current, such as B32")),
      rating: opt(quantity("rating", "the rated current of a fuse")),
      loop: opt(label("Zs", quantity("loop", "the greatest loop impedance the book prints, at 230 V"))),
      opens: opt(label("opens", quantity("fault", "a current of its time-current curve"))),
      within: label("within", quantity("duration", "the time that belongs to it")),
      by: label("by", text("the book or letter the figure stands in")),
    },
    {
      key: ["standard", "curve", "rating", "loop", "opens", "within"],
      means:
        "A figure of a device from your own copy of a book, or of its maker: a limit of Zs, or a point of its curve.",
      background:
        "It goes before the tables here, for every device of that standard, type and rating in the schedule, and is judged like a printed one. Keep one file a table, and `use` it. A limit of Zs is for the edition the schedule names and the time it is printed for: 0.4 s or 5 s.",
      limits: "Tables 41.2 to 41.4 and Appendix 3.",
      example: 'device-figures BS 88-3 45 A Zs 0.96 Ω within 5 s by "Own copy, Table 41.4"',
    },
  );

/** A circuit or a board that does not rely on automatic disconnection of the supply. */
const protectiveMeasure = once(
  {
    measure: choice(list.protectiveMeasures, "what protects instead"),
    source: opt(text("the source: transformer, supply unit")),
  },
  {
    means: "What protects against electric shock where it is not automatic disconnection of the supply.",
    background: "Loops, times, drops and RCDs are then not judged here, and a finding says so once.",
    limits: "Regulations 411.6, 413 and 414.",
    example: 'protective-measure separation "Shaver unit behind the mirror"',
  },
);

const rcdParams = {
  standard: productStandard("the standard on the device"),
  rating: opt(quantity("rating", "the rated current")),
  sensitivity: quantity("sensitivity", "the rated residual current"),
  type: opt(label("type", choice(list.rcdTypes, "the type by waveform"))),
  delay: opt(choice(list.delays, "a time delay")),
  direction: opt(choice(list.directions, "which side it may be fed from")),
} as const;

const deviceTail = {
  poles: opt(choice(list.poles, "the poles it switches")),
  breaking: opt(quantity("breaking", "the rated breaking capacity")),
  sensitivity: opt(quantity("sensitivity", "the rated residual current")),
  type: opt(label("type", choice(list.rcdTypes, "the RCD type by waveform"))),
  direction: opt(choice(list.directions, "which side it may be fed from")),
} as const;

const bonding = often(
  {
    service: choice(list.services, "what is bonded"),
    size: opt(quantity("csa", "the size of the conductor")),
    metal: opt(choice(list.materials, "its metal, if not copper")),
    length: opt(label("length", quantity("length", "the length of the conductor"))),
    continuity: opt(label("continuity", reading("conductor", "the resistance measured end to end"))),
    missing: opt(choice(list.unbonded, "that it is not bonded")),
    reason: opt(text("why nothing is bonded, or what was seen")),
  },
  {
    reads: { key: ["service"], again: true, name: "bonding of {service}", test: "the bonding" },
    figures: "conductor",
    entry: "apart",
    particular: { name: "Main bonding" },
    means: "A main bonding conductor, its size and, when measured, its resistance.",
    background:
      'The reading is compared with the length and size of this conductor, not with one figure for all. Where no extraneous-conductive-part enters, write bonding none "…" with the reason; what enters and is not bonded is missing.',
    limits: "Regulations 411.3.1.2 and 544.1.1; Table 54.8 for a PME supply.",
    example: "bonding water 10 mm² continuity 0.03 Ω",
  },
);

const supplementaryBonding = often(
  {
    place: choice(list.places, "where it is"),
    title: opt(text("which room, or what it joins")),
    size: opt(quantity("csa", "the size of the conductor")),
    shielded: opt(choice(list.shielded, "that it is mechanically protected")),
    continuity: opt(label("continuity", reading("conductor", "the resistance measured between the parts it joins"))),
  },
  {
    reads: {
      key: ["place", "title"],
      again: true,
      name: "supplementary bonding, {place}[ “{title}”]",
      test: "the supplementary bonding",
    },
    figures: "supplementary",
    entry: "apart",
    means: "Supplementary bonding of a location: its size and, when measured, the resistance between the parts.",
    background:
      "It limits the touch voltage until the protective devices have operated. The highest permitted reading follows from the current that operates the slowest of them within 5 s, or from their RCD.",
    limits: "Regulation 415.2.2: R at most 50 V / Ia. Section 544.2: 4 mm², or 2.5 mm² mechanically protected.",
    example: "supplementary-bonding bathroom 4 mm² continuity 0.12 Ω",
  },
);

const faultCurrents = {
  Ipf: once(
    { value: reading("fault", "the prospective fault current") },
    {
      reads: { key: [], again: true, name: "Ipf", test: "the fault current" },
      figures: "fault",
      particular: { name: "Prospective fault current Ipf" },
      means: "The prospective fault current here: the larger of line-neutral and line-earth.",
      background:
        "Measured, calculated or found by enquiry, at the origin and at each board. Every device here must be able to interrupt it.",
      limits: "Regulations 434.1 and 434.5.1.",
      example: "Ipf 1.4 kA",
    },
  ),
  PSCC: once(
    { value: reading("fault", "the prospective short-circuit current") },
    {
      reads: { key: [], again: true, name: "PSCC", test: "the fault current" },
      figures: "fault",
      entry: "usual",
      particular: { name: "PSCC", ifStated: true },
      means: "The fault current between line and neutral.",
      limits: "Regulation 434.1.",
      example: "PSCC 1.4 kA",
    },
  ),
  PEFC: once(
    { value: reading("fault", "the prospective earth fault current") },
    {
      reads: { key: [], again: true, name: "PEFC", test: "the fault current" },
      figures: "fault",
      entry: "usual",
      particular: { name: "PEFC", ifStated: true },
      means: "The fault current between line and earth.",
      limits: "Regulation 434.1.",
      example: "PEFC 1.1 kA",
    },
  ),
} as const;

const spd = once(
  {
    fitted: choice(list.fitted, "whether one is fitted"),
    type: opt(choice(list.surgeTypes, "its type, as marked on it")),
    leads: opt(label("leads", quantity("length", "the length of its leads together, line and earth"))),
    earth: opt(label("earth", quantity("csa", "the size of its conductor to the earth terminal"))),
    why: opt(text("the reason")),
  },
  {
    particular: { name: "Surge protection" },
    means: "Whether a surge protective device is fitted, and if not, why not.",
    background: "Each metre of lead adds about 1 kV to what the equipment sees: the leads are as short as can be.",
    limits: "Sections 443 and 534.",
    example: "spd fitted T2 leads 0.4 m earth 6 mm²",
  },
);

const rotation = once(
  { verdict: verdict(list.rotations, "the sequence found") },
  {
    reads: { key: [], again: true, name: "phase sequence", test: "phase sequence" },
    figures: "verdict",
    particular: { name: "Phase sequence", ifStated: true },
    means: "The phase sequence found here.",
    limits: "Regulation 643.9.",
    example: "phase-sequence ok",
  },
);

const polarity = once(
  { verdict: verdict(list.verdicts, "the result") },
  {
    reads: { key: [], again: true, name: "polarity" },
    figures: "verdict",
    particular: { name: "Supply polarity" },
    means: "Whether line, neutral and earth are connected to the correct terminals.",
    background:
      "Every single-pole switch and fuse in the line conductor only, every socket-outlet correctly connected.",
    limits: "Regulation 643.6.",
    example: "polarity ok",
  },
);

const temperature = once(
  { value: quantity("temperature", "the conductors' temperature at the test") },
  {
    means: "The temperature of the conductors when they were tested.",
    background:
      "The resistance of copper rises by 4 % for every 10 °C. Where the temperature is given, readings are corrected for it before they are compared.",
    example: "temperature 15 °C",
  },
);

const insulationParams = {
  voltage: quantity("testVoltage", "the test voltage"),
  "L-N": opt(label("L-N", reading("insulation", "line to neutral"))),
  "L-E": opt(label("L-E", reading("insulation", "line to earth"))),
  "N-E": opt(label("N-E", reading("insulation", "neutral to earth"))),
  "N-N": opt(label("N-N", reading("insulation", "this neutral to those of other circuits"))),
  "L-L": opt(label("L-L", reading("insulation", "line to line, the lowest of the three"))),
  "L1-L2": opt(label("L1-L2", reading("insulation", "line 1 to line 2"))),
  "L2-L3": opt(label("L2-L3", reading("insulation", "line 2 to line 3"))),
  "L1-L3": opt(label("L1-L3", reading("insulation", "line 1 to line 3"))),
  "L1-N": opt(label("L1-N", reading("insulation", "line 1 to neutral"))),
  "L2-N": opt(label("L2-N", reading("insulation", "line 2 to neutral"))),
  "L3-N": opt(label("L3-N", reading("insulation", "line 3 to neutral"))),
  "L1-E": opt(label("L1-E", reading("insulation", "line 1 to earth"))),
  "L2-E": opt(label("L2-E", reading("insulation", "line 2 to earth"))),
  "L3-E": opt(label("L3-E", reading("insulation", "line 3 to earth"))),
  joined: opt(choice(list.joined, "how the live conductors were connected")),
  surge: opt(choice(list.spdsLeft, "that surge protective devices were left connected")),
  why: opt(text("why the voltage or the method differs, or what was disconnected")),
} as const;

const insulationWording = {
  reads: {
    key: ["voltage"],
    how: ["voltage"],
    again: "each-value",
    name: "insulation {arg}",
    test: "insulation resistance",
  },
  figures: "insulation",
  entry: "apart",
  means: "Insulation resistance between the conductors named, at the test voltage given.",
  background:
    "Disconnect or bypass electronic equipment and surge protective devices first: 500 V can damage them, and they make the reading too low.",
  limits: "Table 64: at least 1.0 MΩ at 500 V for circuits up to 500 V; 0.5 MΩ at 250 V for SELV and PELV.",
  example: "insulation 500 V  L-N 310 MΩ  L-E >999 MΩ  N-E >999 MΩ",
} as const;

const insulation = often(
  {
    ...insulationParams,
    each: opt(label("each", reading("insulation", "every pair of the circuit's conductors that is not named"))),
  },
  insulationWording,
);

const boardInsulation = often(insulationParams, insulationWording);

const testHeader = {
  on: date("the day of the test"),
  by: opt(label("by", text("who made the tests, if not who signed for them"))),
  with: opt(many(label("with", ref("instrument", "the instrument used")))),
} as const;

const rcdTestParams = {
  name: opt(ref("rcd", "the RCD, where the board has several", list.unnamedRcds)),
  sensitivity: opt(quantity("sensitivity", "the rated residual current IΔn")),
  multiple: opt(multiple("the test current as a multiple of IΔn")),
  time: opt(reading("tripTime", "the trip time")),
  noTrip: opt(choice(list.noTrip, "that it did not trip")),
  waveform: opt(choice(list.waveforms, "the waveform of the test current")),
  half: opt(choice(list.halfCycles, "the half cycle it began with")),
} as const;

const rcdTestWording = {
  reads: {
    key: ["name", "sensitivity", "multiple", "waveform", "half"],
    how: ["sensitivity", "multiple", "waveform", "half"],
    instead: ["noTrip"],
    again: true,
    name: "RCD[ {name}][ at {multiple} × IΔn][ {waveform}][ {half}]",
    test: "the RCD",
  },
  figures: "rcd-time",
  means: "An RCD test: IΔn, the multiple of it that was applied, and the trip time.",
  limits: "Regulations 643.7.1 and 643.8; product standards BS EN 61008 and 61009.",
  example: "rcd 30 mA 1x 24 ms",
} as const;

const rcdTest = often(rcdTestParams, rcdTestWording);

const atOutlet = opt(label("at", ref("point", "the point, where the RCD is in its socket-outlet")));

const { name: nameOfRcd, ...rcdTestRest } = rcdTestParams;

const rcdTestOfWay = often(
  {
    name: nameOfRcd,
    point: atOutlet,
    ...rcdTestRest,
    button: opt(label("test-button", verdict(list.pressed, "the result of its own test button"))),
  },
  {
    ...rcdTestWording,
    reads: {
      ...rcdTestWording.reads,
      key: ["name", "point", "sensitivity", "multiple", "waveform", "half"],
      name: "RCD[ {name}][ at {point}][ at {multiple} × IΔn][ {waveform}][ {half}]",
    },
  },
);

const testButton = often(
  { name: nameOfRcd, point: atOutlet, verdict: verdict(list.pressed, "the result") },
  {
    reads: {
      key: ["name", "point"],
      again: true,
      name: "test button[ of {name}][ at {point}]",
      test: "the test button",
    },
    figures: "verdict",
    means: "The result of pressing the RCD's test button.",
    limits: "Regulation 643.10.",
    example: "test-button ok",
  },
);

/** Which circuits a line of an inspection is of. Without a way it is of the whole board, without a board of all. */
const ofCircuits = {
  board: opt(label("board", ref("board", "the board"))),
  ways: opt(many(label("way", anyName("a way of that board")))),
} as const;

const partWork = once(
  { work: choice(list.partWorks, "what the work is to this part") },
  {
    means: "What the work is to this part. The nearest line counts: that of the way, its board, the installation.",
    background:
      "It decides what is required of the part. On an old board write `work existing` once, and `work new` on the circuit that was added.",
    limits: "Regulations 132.16 and 641.5.",
    example: "work existing",
  },
);

const vulnerable = often(
  { what: text("the equipment, and what to do with it before a test") },
  {
    key: ["what"],
    paper: "may be damaged by a test",
    means: "Equipment that a test may damage, and what is done about it first.",
    background: "It is shown on the worksheet before the test.",
    limits: "Regulation 643.3.3.",
    example: 'vulnerable "Dimmers in the hall: link line and neutral"',
  },
);

const clampLeakage = once(
  { value: reading("leakage", "the current") },
  {
    reads: { key: [], again: false, name: "earth leakage by clamp", test: "the earth leakage" },
    figures: "leakage",
    entry: "usual",
    means: "Earth leakage in normal service, measured with a clamp round all live conductors together.",
    background: "It is what flows with the equipment switched on, not a fault: an RCD sees the same.",
    limits: "Regulation 531.3.2: at most 30 % of IΔn for all circuits of one RCD.",
    example: "leakage 2.1 mA",
  },
);

const thermal = often(
  {
    temperature: quantity("temperature", "the highest temperature seen"),
    what: text("the place"),
    photo: opt(label("photo", text("the image or its file"))),
  },
  {
    remark: true,
    key: ["what"],
    means: "What a thermal camera showed: the hottest place, its temperature, the image.",
    background: "Taken under load: note the load, since what is cool without it shows little.",
    limits: "Regulation 653.2 of the 2026 edition allows thermal images in a report.",
    example: 'thermal 41 °C "Line terminal of way 3, at 18 A" photo "t3.jpg"',
  },
);

const blocks = {
  file: {
    wayfile: once(
      { version: count("the version of the language") },
      { means: "The version of the language; the first statement of every file.", example: "wayfile 1" },
    ),
    "may-ignore": often(
      { words: many(anyName("a word of a later version")) },
      {
        key: ["words"],
        means: "Words of a later version of the language that a program which does not know them may pass over.",
        background:
          "What such a line says is then not judged, and the program says so. A word that must be understood is not listed: it is an error where it is not known.",
        example: "may-ignore thermal-image",
      },
    ),
    use: often(
      { path: text("a path from this file's folder") },
      {
        key: ["path"],
        means: "Reads another file, so that what it defines can be used here.",
        background: "For instruments that many schedules share, and for boards kept in files of their own.",
        example: 'use "shared/instruments.ways"',
      },
    ),
    instrument: often(
      { name: define("instrument", "a short name"), title: opt(text("what it is")) },
      {
        means: "A test instrument, its serial number and when its calibration is due.",
        opens: "instrument",
        blockOptional: true,
        example:
          'instrument M1 "Multifunction tester" {\n  serial       "4471"\n  calibrated   2025-11-03\n  due          2026-11-03\n}',
      },
    ),
    "cable-type": often(
      { name: define("cable-type", "a short name"), ...cableParams },
      {
        means: "A cable described once and used by name.",
        example: "cable-type twin2 flat-twin 70 °C line 2.5 mm² cpc 1.5 mm²",
      },
    ),
    "device-figures": deviceFiguresRow(),
    "circuit-type": circuitTypeRow(),
    field,
    installation: often(
      { title: text("its name") },
      {
        key: ["title"],
        means: "An installation: its supply and its boards.",
        opens: "installation",
        example: 'installation "Name" {\n  standard     BS 7671:2018+A2:2022\n  stage        design\n}',
      },
    ),
    board: boardRow(),
    ...record,
  },

  installation: {
    standard: once(
      { edition: wiringStandard("the edition of the wiring regulations") },
      {
        figures: "edition",
        means: "The edition of the wiring regulations the work is checked against.",
        background:
          "The limits of this edition apply. For a periodic inspection of older work, name the edition the inspection is made to. Without one, nothing is compared with a limit.",
        example: "standard BS 7671:2018+A2:2022",
      },
    ),
    stage: once(
      { stage: choice(list.stages, "the stage of the work") },
      { means: "The stage of the work: it decides which tests must be recorded by now.", example: "stage tested" },
    ),
    work: once(
      { work: choice(list.works, "what kind of work it is") },
      {
        means: "Whether this is new work, an addition or alteration, or an existing installation.",
        background:
          "New work must be tested completely. An existing installation is not faulted for a requirement that came later.",
        example: "work new",
      },
    ),
    premises: once(
      { premises: choice(list.premises, "what kind of premises") },
      { means: "The kind of premises. Some rules apply only in some kinds.", example: "premises dwelling" },
    ),
    location: once(
      { text: text("its place") },
      { means: "Where the installation is.", example: 'location "East quay"' },
    ),
    extent: once(
      { text: text("what is covered") },
      { means: "What this schedule covers, and what is excluded.", example: 'extent "Ground floor only"' },
    ),
    ...signatories,
    "also-designed": alsoDesigned,
    inspection: inspectionRow(),
    supply: once(
      {},
      {
        means: "The supply at the origin.",
        opens: "supply",
        example: "supply {\n  earthing     TN-C-S\n  Ze           0.21 Ω\n  Ipf          1.4 kA\n}",
      },
    ),
    instrument: often(
      { name: define("instrument", "a short name"), title: opt(text("what it is")) },
      {
        means: "A test instrument, its serial number and when its calibration is due.",
        opens: "instrument",
        blockOptional: true,
        example: 'instrument M1 "Multifunction tester" { due 2026-11-03 }',
      },
    ),
    "cable-type": often(
      { name: define("cable-type", "a short name"), ...cableParams },
      {
        means: "A cable described once and used by name.",
        example: "cable-type twin2 flat-twin line 2.5 mm² cpc 1.5 mm²",
      },
    ),
    "device-figures": deviceFiguresRow(),
    "circuit-type": circuitTypeRow(),
    field,
    containment: containmentRow(),
    board: boardRow(),
    ...record,
  },

  inspection: {
    reference: once(
      { text: text("the number of the paper") },
      { means: "The number of the paper that this inspection gives.", example: 'reference "R-0412"' },
    ),
    issued: once(
      { on: date("the day") },
      { means: "When the paper was issued, if not on the last day of the inspection.", example: "issued 2026-03-09" },
    ),
    client: once(
      { name: text("who ordered it"), address: opt(label("address", text("their address"))) },
      {
        means: "Who ordered the inspection or the work.",
        limits: "Appendix 6.",
        example: 'client "Mill Lane Housing" address "4 Mill Lane"',
      },
    ),
    occupier: once(
      { name: text("who uses the premises") },
      { means: "Who occupies the premises, if not the client.", example: 'occupier "The tenant"' },
    ),
    reason: once(
      { text: text("why") },
      {
        means: "Why the inspection is made.",
        limits: "Section 651.",
        example: 'reason "Change of tenant; the last report has expired"',
      },
    ),
    "work-done": once(
      { text: text("what was done") },
      {
        outlines: true,
        means: "What was installed or changed.",
        limits: "Regulation 644.1.",
        example: 'work-done "Cooker circuit extended to an island unit"',
      },
    ),
    covers: often(ofCircuits, {
      key: ["board", "ways"],
      means: "The boards or ways that this inspection or work is of. All of the schedule if left out.",
      example: "covers board A way 7",
    }),
    extent: once(
      { text: text("what is covered") },
      {
        means: "What was inspected and tested, and what was not.",
        limits: "Regulations 644.1.1 and 653.2.",
        example: 'extent "All fixed wiring of the ground floor; one accessory in five opened"',
      },
    ),
    "sampled-out": often(
      { ...ofCircuits, reason: text("why, and what was tested in their place") },
      {
        key: ["board", "ways"],
        outlines: true,
        means: "Circuits that this inspection left out because alike ones were tested.",
        background:
          "A circuit that has no tests since the last inspection and stands on no such line, and under no limitation, is reported as missing.",
        limits: "Regulation 653.2; guidance to periodic inspection.",
        example: 'sampled-out board A way 4 5 6 "Alike to way 3, which was tested and gave no cause to look further"',
      },
    ),
    limitation: often(
      {
        kind: choice(list.limitationKinds, "agreed beforehand, or met on the day"),
        ...ofCircuits,
        what: text("what could not be inspected or tested"),
        why: label("why", text("the reason")),
        with: opt(label("with", text("who agreed"))),
      },
      {
        key: ["what"],
        outlines: true,
        means: "What could not be inspected or tested, why, and who agreed.",
        limits: "Regulation 653.2: agreed limitations are recorded with whom they were agreed.",
        example:
          'limitation agreed board A way 2 "Freezer circuit not isolated" why "Stock would spoil" with "The manager"',
      },
    ),
    wired: once(
      { around: roughTime("when") },
      {
        means: "When the installation was wired, as far as is known.",
        example: "wired about 1985",
      },
    ),
    additions: once(
      {
        seen: choice(list.additionsSeen, "whether there are any"),
        around: opt(roughTime("about when")),
        what: opt(text("which")),
      },
      {
        means: "Whether additions or alterations can be seen, and how old they are.",
        example: 'additions seen about 2005 "Shower, garage"',
      },
    ),
    records: once(
      { held: choice(list.recordsHeld, "whether there are any"), what: opt(text("which")) },
      {
        means: "Whether records of earlier inspections and of the design are available.",
        limits: "Regulation 651.1.",
        example: 'records held "Report of 2016"',
      },
    ),
    "last-inspected": once(
      { on: opt(date("the day")), around: opt(roughTime("about when")), record: opt(text("by which record")) },
      {
        means: "When the installation was last inspected.",
        background: "If left out, the inspection before this one in the schedule.",
        example: 'last-inspected 2016-03-05 "R-0166"',
      },
    ),
    inspected: often(
      {
        result: verdict(list.inspectionResults, "the result"),
        title: opt(text("what was looked at, where no number is known")),
        items: opt(many(rule("the number of the item, as in the standard's schedule"))),
      },
      {
        reads: { key: ["items", "title"], again: false, name: "item[ {items}][ {title}]", test: "the inspection" },
        figures: "verdict",
        means: "What was inspected by sight, by its number in the standard's schedule of items, and the result.",
        background:
          "Several numbers may stand on a line, and 4.1..4.6 is all from the first to the last. The number of a section is for all its items that have no line of their own.",
        limits: "Regulations 642.3 and 651.2; Appendix 6.",
        example: "inspected 4.1..4.6 4.13 ok",
      },
    ),
    observation: often(
      {
        code: choice(list.observationCodes, "its classification code"),
        number: opt(count("its number")),
        text: text("what was seen, and where"),
        ...ofCircuits,
        at: opt(label("at", anyName("the point"))),
        rule: opt(label("rule", rule("a regulation or a check's id"))),
        items: opt(many(label("item", rule("an item of the inspection")))),
        photo: opt(many(label("photo", text("a photograph or its file")))),
        remedied: opt(label("remedied", date("the day it was put right"))),
        by: opt(label("by", text("who put it right, or the paper that says so"))),
      },
      {
        key: ["text"],
        outlines: true,
        means: "What was observed, where, and its classification code.",
        background:
          "One code, the gravest. Where it names a check, the schedule says when that check no longer finds anything there. What was put right stays, with `remedied` and the day: the report is as it was issued.",
        limits: "Appendix 6; Regulation 653.2.",
        example: 'observation 1 C2 "No earth at the hall lights" board A way 3 at S2 rule continuity/open item 5.8',
      },
    ),
    condition: once(
      { text: text("in words") },
      {
        means: "The general condition of the installation, in words.",
        example: 'condition "Sound, of its age; accessories worn in the kitchen"',
      },
    ),
    existing: often(
      {
        part: choice(list.existingParts, "what was looked at"),
        verdict: choice(list.adequacies, "whether it will do"),
        text: opt(text("by what it was found")),
      },
      {
        key: ["part"],
        means:
          "Whether what was there before is sufficient for the work: the existing installation must not impair it.",
        background: "Needed of every addition, alteration and minor work, part by part.",
        limits: "Regulations 132.16 and 641.5.",
        example: 'existing load adequate "58 A and 13 A on an 80 A cut-out"',
      },
    ),
    comments: once(
      { text: text("what was seen") },
      {
        means: "Defects and other remarks on the existing installation that the work is no part of.",
        limits: "Regulation 644.1.2.",
        example: 'comments "No RCD on the sockets of way 3; reported to the owner"',
      },
    ),
    outcome: once(
      { of: choice(list.outcomes, "the outcome"), why: opt(text("why, where the codes would say otherwise")) },
      {
        outlines: true,
        means: "The outcome for continued service.",
        background: "Any C1 or C2 is unsatisfactory; C3 alone is satisfactory.",
        limits: "Appendix 6.",
        example: "outcome unsatisfactory",
      },
    ),
    "next-inspection": once(
      { on: date("the day by which"), reason: text("the reason for that day") },
      {
        outlines: true,
        means: "The day by which the next inspection is recommended, and why.",
        limits: "Regulations 644.4 and 653.4; the intervals of the guidance to periodic inspection.",
        example: 'next-inspection 2031-03-05 "Let dwelling: five years or change of tenant"',
      },
    ),
    attached: often(
      { what: text("what is attached") },
      {
        key: ["what"],
        means: "What goes with the paper: photographs, thermal images, a risk assessment.",
        example: 'attached "Thermal images 1 to 6 of board A"',
      },
    ),
    ...signatories,
    "also-designed": alsoDesigned,
    authorised: once(signedOnDay, {
      signs: true,
      means: "Who authorised the paper for issue, and when.",
      limits: "Appendix 6.",
      example: 'authorised by "P.L." 2026-03-09 position "Qualified supervisor"',
    }),
    ...record,
  },

  instrument: {
    serial: once(
      { text: text("the serial number") },
      { means: "The instrument's serial number.", example: 'serial "4471"' },
    ),
    calibrated: often(
      { on: date("the day"), due: opt(label("due", date("the day it is due again"))) },
      {
        key: ["on"],
        means:
          "When it was calibrated. Each calibration has a line, and each test is judged by the one in force on its day.",
        background:
          "When it comes back from the laboratory a line is added and the earlier ones stay, for the tests made under them.",
        example: "calibrated 2025-11-03 due 2026-11-03",
      },
    ),
    due: once(
      { on: date("the day") },
      {
        means:
          "When its latest calibration runs out, where that line does not state it. A test after that day is not traceable.",
        example: "due 2026-11-03",
      },
    ),
    tests: once(
      { types: many(choice(list.rcdTypes, "an RCD type")) },
      { means: "The RCD types it can test.", example: "tests AC A F" },
    ),
    accuracy: often(
      {
        of: choice(list.measuredKinds, "what is measured"),
        share: quantity("share", "the uncertainty as a share of the reading"),
        count: opt(count("the digits of the last figure shown, added to it")),
        digits: opt(choice(list.lastDigits, "what the number counts")),
      },
      {
        key: ["of"],
        means: "The uncertainty of its readings: % of reading, plus digits of the last figure shown.",
        background:
          "From the instrument's data sheet. A reading nearer to its limit than this cannot be called a certain pass or fail.",
        example: "accuracy continuity 2 % 2 digits",
      },
    ),
    range: often(
      {
        of: choice(list.rangeKinds, "what is measured"),
        top: quantity("meterRange", "the highest value it can show"),
      },
      {
        key: ["of"],
        means: "The highest value it can show. A higher resistance is recorded with > before this value.",
        example: "range insulation 999 MΩ",
      },
    ),
    "test-current": once(
      { value: quantity("current", "the test current of a continuity test") },
      {
        means: "The short-circuit current of its continuity test.",
        limits: "At least 200 mA: BS EN 61557-4, the standard for such instruments.",
        example: "test-current 200 mA",
      },
    ),
    "test-voltage": once(
      { values: many(quantity("testVoltage", "a voltage it tests insulation at")) },
      { means: "The voltages it can test insulation at.", example: "test-voltage 250 V 500 V" },
    ),
    note: record.note,
    detail: record.detail,
  },

  supply: {
    earthing: once(
      { system: choice(list.earthings, "the earthing arrangement") },
      {
        particular: { name: "Earthing" },
        means: "How the supply and the installation are earthed.",
        limits: "Regulation 312.2; Part 2 definitions.",
        example: "earthing TN-C-S",
      },
    ),
    source: once(
      { of: choice(list.supplySources, "public or private") },
      {
        means: "Whether the supply is public or private. Public if left out.",
        limits: "Appendix 4, section 6.4: a private supply allows a larger voltage drop.",
        example: "source private",
      },
    ),
    phases: once(
      { count: choice(list.phaseCounts, "how many") },
      {
        particular: { name: "Live conductors" },
        means: "Single-phase or three-phase supply. Single if left out.",
        example: "phases three",
      },
    ),
    U0: once(
      { value: quantity("voltage", "the nominal voltage to earth") },
      {
        particular: { name: "U0" },
        means: "Nominal voltage between line and earth. 230 V if left out.",
        example: "U0 230 V",
      },
    ),
    Ze: once(
      { value: reading("loop", "the external loop impedance") },
      {
        reads: { key: [], again: true, name: "Ze" },
        figures: "supply-loop",
        particular: { name: "Ze" },
        means: "Earth fault loop impedance outside the installation, at the origin.",
        background:
          "Measured with the installation isolated and the earthing conductor disconnected from parallel paths, or found by enquiry: then write `declared`. Reconnect the earthing conductor before anything is switched on again.",
        limits: "Regulation 313.1. The maximum figures distributors declare: 0.35 Ω for TN-C-S, 0.8 Ω for TN-S.",
        example: "Ze 0.21 Ω",
      },
    ),
    ...faultCurrents,
    electrode: electrodeRow("The installation's own earth electrode and its resistance (RA)."),
    cutout: once(
      {
        standard: productStandard("the standard on the fuse"),
        rating: quantity("rating", "its rated current"),
        breaking: opt(quantity("breaking", "its breaking capacity")),
      },
      {
        particular: { name: "Supply protective device" },
        means: "The distributor's fuse at the origin.",
        example: "cutout BS 88-3 80 A",
      },
    ),
    "other-source": often(
      { what: text("what it is, and where it is isolated") },
      {
        key: ["what"],
        means: "Another source of supply: a generator, a battery, photovoltaic panels.",
        limits: "Regulations 313.2 and 551; Appendix 6.",
        example: 'other-source "Battery 5 kWh in the garage, isolator beside it"',
      },
    ),
    standby: often(
      {
        what: text("what it is"),
        loop: opt(label("Ze", quantity("loop", "its loop impedance at the origin, line to earth"))),
        fault: opt(label("Ipf", quantity("fault", "the greatest fault current at the origin on it"))),
        gives: opt(label("gives", quantity("current", "the most current it keeps up into a fault"))),
        electrode: opt(
          label("electrode", quantity("electrode", "the resistance of the electrode that earths it then")),
        ),
        neutral: opt(label("neutral", choice(list.neutralLinks, "how its neutral is earthed while it supplies"))),
        ...ofCircuits,
        boards: opt(many(label("boards", ref("board", "the boards it supplies")))),
      },
      {
        key: ["what"],
        means: "A source that takes over: a generator, an UPS, an inverter that runs as an island.",
        background:
          "Its loop impedance is that of source and cable to the origin, as its maker gives it, and decides what opens in time; its greatest fault current, of the first moment, decides what the devices must break. An inverter keeps up little more than its rated current: write what it `gives`. Without `boards` or `board` it supplies all of them, and with them the boards behind.",
        limits: "Regulations 551.4.3, 411.3.2 and 434.1: protection holds on every source.",
        example: 'standby "Battery inverter" gives 32 A electrode 84 Ω neutral linked board A way 1 2 5',
      },
    ),
    transformer: once(
      {
        rating: quantity("apparent", "its rating"),
        impedance: label("impedance", quantity("share", "its impedance, as on its plate")),
      },
      {
        means: "The transformer at the origin, from which fault currents follow where none is recorded.",
        background:
          "Its own impedance alone: the cable between it and the origin takes something off, and is left out.",
        limits: "Regulation 434.1: a fault current may be found by calculation.",
        example: "transformer 500 kVA impedance 4.75 %",
      },
    ),
    notice: often(
      { what: text("what it says, and where it is") },
      {
        key: ["what"],
        means: "A notice that whoever works here must see, and where it is fixed.",
        background: "Where a second source can keep conductors live, it is at the origin, the meter and the board.",
        limits: "Section 514: 514.15.1 for more than one source.",
        example: 'notice "Two sources: at the cut-out, the meter and the board"',
      },
    ),
    demand: once(
      { value: quantity("current", "the maximum demand per line") },
      {
        particular: { name: "Maximum demand" },
        means: "The maximum demand calculated from the loads.",
        limits: "Regulation 311.1.",
        example: "demand 58 A",
      },
    ),
    island: once(
      {
        from: text("what supplies the installation then"),
        electrode: opt(label("electrode", quantity("electrode", "the resistance of the electrode used then"))),
      },
      {
        means: "The installation, or part of it, goes on without the public network, from a source of its own.",
        background:
          "The distributor's earth may not be relied on then: an electrode of the consumer's own earths the neutral of the source.",
        limits: "Regulations 551.4.3.2.1 and 826.1.1.2.1.",
        example: 'island "Battery inverter, whole house" electrode 84 Ω',
      },
    ),
    tails: once(
      { size: quantity("csa", "the size of the meter tails") },
      {
        particular: { name: "Tails" },
        figures: "tails",
        means: "The size of the meter tails.",
        example: "tails 25 mm²",
      },
    ),
    "earthing-conductor": once(
      {
        size: quantity("csa", "its size"),
        metal: opt(choice(list.earthingMetals, "its metal, if not copper")),
        buried: opt(choice(list.buriedIn, "that it is buried in the ground")),
        protected: opt(label("protected", choice(list.soilProtections, "what it is protected against in the ground"))),
        continuity: opt(label("continuity", reading("conductor", "its resistance"))),
      },
      {
        reads: { key: [], again: false, name: "earthing conductor", test: "the earthing conductor" },
        figures: "conductor",
        particular: { name: "Earthing conductor" },
        means: "The conductor between the main earthing terminal and the means of earthing.",
        background: "Copper and not buried unless stated; if buried, unprotected unless stated.",
        limits: "Section 542.3; Tables 54.1 and 54.7.",
        example: "earthing-conductor 16 mm²",
      },
    ),
    bonding,
    spd,
    polarity,
    "phase-sequence": rotation,
    measured: once(
      { on: date("the day"), with: opt(many(label("with", ref("instrument", "the instrument used")))) },
      { means: "When the figures of this block were measured, and with what.", example: "measured 2026-03-05 with M1" },
    ),
    live: often(testHeader, {
      key: ["on"],
      means:
        "Tests at the origin on one day. The latest reading of each kind counts, before any line of the supply itself.",
      background:
        "Ze is measured with the installation isolated and the earthing conductor disconnected. Reconnect it before anything is switched on again.",
      opens: "supplyLive",
      example: "live 2026-03-05 with M1 {\n  Ze           0.21 Ω\n  Ipf          1.4 kA\n  polarity     ok\n}",
    }),
    ...record,
  },

  supplyLive: {
    Ze: once(
      { value: reading("loop", "the external loop impedance") },
      {
        reads: { key: [], again: true, name: "Ze" },
        figures: "supply-loop",
        means: "Earth fault loop impedance outside the installation, as measured on this day.",
        limits: "Regulation 643.7.3. The maximum figures distributors declare: 0.35 Ω for TN-C-S, 0.8 Ω for TN-S.",
        example: "Ze 0.21 Ω",
      },
    ),
    ...faultCurrents,
    electrode: once(
      {
        type: opt(choice(list.electrodes, "what it is")),
        value: reading("electrode", "its resistance to earth"),
        method: opt(choice(list.electrodeMethods, "how it was measured")),
      },
      {
        reads: { key: [], again: true, name: "RA", test: "the earth electrode" },
        figures: "electrode",
        means: "The resistance of the installation's own earth electrode, as measured on this day.",
        limits: "Regulation 411.5.3: RA × IΔn at most 50 V.",
        example: "electrode rod 84 Ω",
      },
    ),
    voltage: once(
      { value: reading("voltage", "the voltage") },
      {
        reads: { key: [], again: false, name: "voltage" },
        figures: "voltage",
        entry: "usual",
        means: "The voltage between line and neutral, or line and earth, at the origin.",
        example: "voltage 236 V",
      },
    ),
    polarity,
    "phase-sequence": rotation,
    ...testRecord,
  },

  board: {
    formerly: often(
      { name: anyName("the name it had"), title: opt(text("the title it had")), on: opt(date("the day it changed")) },
      {
        key: ["name"],
        means: "The name this board had before, so that its earlier records are found.",
        example: 'formerly B "Old loft board" 2026-02-27',
      },
    ),
    work: partWork,
    "fed-from": once(
      { from: ref("board", "what feeds it", { supply: "Fed directly from the origin." }) },
      { means: "What feeds this board: the supply, or another board.", example: "fed-from supply" },
    ),
    changeover: once(
      { what: text("the switch, and how its positions exclude each other") },
      {
        means: "The board is fed from one of several feeders, through a changeover switch.",
        background: "Without it a board with two feeders is taken to be live from both at once.",
        limits: "Regulations 537.1.4, 551.6 and 514.15.1.",
        example: 'changeover "Three-position switch, mechanically interlocked"',
      },
    ),
    location: once({ text: text("its place") }, { means: "Where the board is.", example: 'location "Plant room"' }),
    phases: once(
      { count: choice(list.phaseCounts, "how many") },
      { means: "Single-phase or three-phase board. The same as what feeds it if left out.", example: "phases three" },
    ),
    phase: once(
      { phase: choice(list.linesOfThree, "which line") },
      {
        means: "Which line of a three-phase supply a single-phase board is on.",
        background:
          "Without it the demand of the board is counted on all three lines. Where a way of another board feeds it, write the phase on that way.",
        limits: "Regulation 314.1.",
        example: "phase L2",
      },
    ),
    place: once(
      { places: many(choice(list.places, "where its circuits are")) },
      {
        figures: "board-place",
        means: "The location, special or not, of every way of this board that states none itself.",
        background: "For a site board, a pontoon or a farm building: one line instead of one on each way.",
        limits: "Part 7.",
        example: "place marina",
      },
    ),
    earthing: once(
      { system: choice(list.ownEarthings, "the earthing") },
      {
        means: "This board and what it feeds are earthed by an electrode of their own, not by the supply.",
        background:
          "Used for pitches, pontoons and sites on a PME supply. The supply's earth is not taken to this board.",
        limits: "Regulation 411.5; 704.411.3.1, 708.411.4 and 709.411.4 for special locations.",
        example: "earthing TT",
      },
    ),
    electrode: electrodeRow("The board's own earth electrode, and its resistance (RA)."),
    diversity: once(
      { share: quantity("share", "the share in use at the same time") },
      {
        means: "Diversity between the circuits of the board, by the designer's own judgement.",
        background:
          "Applied to the sum of the board's circuits, each in full or with its own diversity. The published table is not applied as well.",
        limits: "Regulation 311.1.",
        example: "diversity 80 %",
      },
    ),
    "main-switch": once(
      {
        standard: productStandard("the standard on the switch"),
        rating: quantity("rating", "its rated current"),
        sensitivity: opt(quantity("sensitivity", "its rated residual current, if it is an RCD")),
        type: opt(label("type", choice(list.rcdTypes, "the RCD type"))),
        delay: opt(choice(list.delays, "a time delay")),
        direction: opt(choice(list.directions, "which side it may be fed from")),
        poles: opt(choice(list.poles, "the poles it switches")),
        voltage: opt(quantity("voltage", "its rated voltage")),
      },
      {
        figures: "rating",
        means: "The main switch of the board.",
        example: "main-switch BS EN 60947-3 100 A double-pole 400 V",
      },
    ),
    "switch-setting": once(
      { rating: quantity("rating", "the current") },
      {
        means: "What the release of the main switch is set to, or the rated current of its fuse.",
        example: "switch-setting 80 A",
      },
    ),
    "protective-measure": protectiveMeasure,
    enclosure: once(
      { made: choice(list.enclosures, "what it is made of") },
      {
        means: "What the enclosure of the board is made of.",
        limits: "Regulation 421.1.201: in a home of non-combustible material, or in a cabinet of it.",
        example: "enclosure steel",
      },
    ),
    busbar: once(
      { rating: quantity("rating", "its rated current") },
      {
        figures: "rating",
        means: "The rated current of the board's busbars.",
        background:
          "From the maker's label: the rated current of the assembly, InA. Nothing in the board protects busbars against overload: either the upstream device is no larger, or the demand of the circuits is no higher.",
        limits: "Regulation 536.4.202; BS EN 61439.",
        example: "busbar 125 A",
      },
    ),
    "conditional-rating": once(
      { value: quantity("breaking", "the conditional short-circuit rating") },
      {
        means: "The fault current the board withstands as an assembly, protected by the fuse it was tested with.",
        limits: "BS EN 61439-3, Annex ZB: 16 kA for a consumer unit protected by a 100 A fuse.",
        example: "conditional-rating 16 kA",
      },
    ),
    Zdb: once(
      { value: reading("loop", "the loop impedance at the board") },
      {
        reads: { key: [], again: true, name: "Zdb" },
        figures: "board-loop",
        means: "Earth fault loop impedance at this board.",
        background: "Zs of each way starts from it. It cannot be lower than Ze.",
        limits: "Regulation 411.4.",
        example: "Zdb 0.31 Ω",
      },
    ),
    ...faultCurrents,
    rcd: often(
      { name: define("rcd", "a short name"), ...rcdParams },
      {
        figures: "rating",
        means: "An RCD of the board that protects several ways.",
        limits: "Regulations 411.3.3, 415.1 and 531.3.",
        example: "rcd east BS EN 61008 63 A 30 mA type A",
      },
    ),
    containment: containmentRow(),
    "supplementary-bonding": supplementaryBonding,
    spd,
    vulnerable,
    "phase-sequence": rotation,
    polarity,
    ...signatories,
    dead: often(testHeader, {
      key: ["on"],
      means: "Dead tests of the board on one day.",
      opens: "boardDead",
      example: "dead 2026-03-04 with M1 {\n  insulation   500 V  L-E 120 MΩ\n}",
    }),
    live: often(testHeader, {
      key: ["on"],
      means: "Live tests of the board on one day.",
      opens: "boardLive",
      example: "live 2026-03-05 with M1 {\n  Zdb          0.31 Ω\n  Ipf          0.92 kA\n}",
    }),
    way: often(
      {
        id: define("way", "its number on the board"),
        kind: opt(choice(list.wayKinds, "what kind of circuit it is")),
        as: opt(label("as", ref("circuit-type", "a circuit type of this schedule"))),
        title: opt(text("what it supplies")),
      },
      {
        means: "A way of the board, and its circuit.",
        opens: "way",
        blockOptional: true,
        example:
          'way 1 radial "Lighting" {\n  device       BS EN 60898 B6 6 kA\n  cable        flat-twin line 1.5 mm² cpc 1.0 mm²\n  route        clipped method C\n  length       18 m\n  Ib           2.1 A\n  serves       lighting\n}',
      },
    ),
    ...record,
  },

  way: {
    formerly: often(
      {
        number: anyName("the number it had"),
        title: opt(text("the title it had")),
        on: opt(date("the day it changed")),
      },
      {
        key: ["number"],
        means: "The number, and the title, this circuit had before.",
        background: "Comparisons and departures follow it: its readings stay its own when the board is renumbered.",
        example: 'formerly 5 "Oven" 2026-02-27',
      },
    ),
    work: partWork,
    device: once(
      {
        standard: productStandard("the standard on the device"),
        curve: opt(shorthand("type and rated current, such as B32")),
        rating: opt(quantity("rating", "the rated current of a fuse")),
        class: opt(choice(list.curves, "the class of a fuse")),
        oldType: opt(choice(list.oldTypes, "the type of a breaker to BS 3871")),
        ...deviceTail,
      },
      {
        figures: "device",
        sizes: true,
        means:
          "The protective device: its standard, type and rated current, breaking capacity, and residual current if it is an RCBO.",
        background:
          "As marked on the device. Its type and rating decide the highest Zs the circuit may have; of a breaker to BS EN 60947-2 its `settings` do.",
        limits: "Regulations 433.1.1, 434.5.1 and Tables 41.2 to 41.4.",
        example: "device BS EN 60898 B32 6 kA",
      },
    ),
    settings: once(
      {
        thermal: opt(label("thermal", quantity("rating", "what its overload release is set to"))),
        short: opt(label("short-time", quantity("fault", "what its short-time release is set to"))),
        within: opt(label("within", quantity("duration", "how long that takes to open at most"))),
        instantaneous: opt(label("instantaneous", quantity("fault", "what its instantaneous release is set to"))),
        tolerance: opt(label("tolerance", quantity("share", "how far its releases may be off, by its maker"))),
      },
      {
        means: "What the releases of a breaker to BS EN 60947-2 are set to.",
        background:
          "The setting of the overload release takes the place of the rated current. A short-circuit release is taken to be up to 20 % off, unless its maker's `tolerance` is written; a short-time release counts with the time it takes at most, `within`.",
        limits: "Regulations 433.1.1, 411.3.2 and 434.5.2; BS EN 60947-2.",
        example: "settings thermal 125 A instantaneous 1.25 kA",
      },
    ),
    behind: once(
      { rcd: ref("rcd", "an RCD of this board") },
      { paper: "behind RCD", means: "The RCD of the board that protects this way.", example: "behind east" },
    ),
    rcd: once(rcdParams, {
      figures: "rcd",
      paper: "RCD",
      means: "A separate RCD for this way alone.",
      example: "rcd BS EN 61008 40 A 30 mA type A",
    }),
    afdd: once(
      { standard: productStandard("the standard on the device") },
      {
        paper: "arc fault detection",
        means: "An arc fault detection device.",
        limits: "Regulation 421.1.7.",
        example: "afdd BS EN 62606",
      },
    ),
    phase: once(
      { phase: choice(list.phases, "which line") },
      { sizes: true, means: "Which line of a three-phase board the way is on.", example: "phase L2" },
    ),
    feeds: once(
      { board: ref("board", "the board it feeds") },
      { means: "The board that this distribution circuit feeds.", example: "feeds B" },
    ),
    cable: once(
      { use: opt(ref("cable-type", "a cable type of this schedule")), ...optionalCable() },
      {
        figures: "cable",
        inUse: true,
        sizes: true,
        twice:
          "of cables in parallel write one, and parallel with their number. Unequal ones, and a size that changes along the route, are not judged here (433.4.2, 433.2).",
        means: "The cable: its construction, and the size of each conductor.",
        limits: "Appendix 4 for current-carrying capacity and voltage drop; Table 54.7 for the protective conductor.",
        example: "cable flat-twin line 2.5 mm² cpc 1.5 mm²",
      },
    ),
    route: often(
      {
        kind: opt(choice(list.routeKinds, "how it runs")),
        size: opt(quantity("size", "the size of the conduit")),
        made: opt(choice(list.containmentMakes, "what the conduit or trunking is made of")),
        method: opt(label("method", choice(list.methods, "the reference method"))),
        grouped: opt(label("grouped", count("the number of circuits grouped together"))),
        arrangement: opt(choice(list.arrangements, "how the group is arranged")),
        ambient: opt(label("ambient", quantity("temperature", "the temperature around the cable"))),
        insulated: opt(label("insulated", quantity("size", "the length surrounded by thermal insulation"))),
        depth: opt(label("depth", quantity("depth", "how deep it lies: concealed in a wall, or in the ground"))),
        soil: opt(label("soil", quantity("soil", "the thermal resistivity of the ground, where it was found out"))),
        apart: opt(label("apart", quantity("gap", "the clear distance of cables or ducts grouped in the ground"))),
        length: opt(label("length", quantity("length", "the length of this section"))),
        bends: opt(label("bends", count("the bends in this section"))),
        framed: opt(choice(list.framings, "what the wall is framed with")),
        in: opt(label("in", ref("containment", "the conduit or trunking it shares with others"))),
        legs: opt(label("legs", count("how many legs of a ring run here, if not both"))),
        carries: opt(many(label("carries", choice(list.carried, "the conductors that run here, if not all")))),
        factor: opt(label("factor", quantity("share", "a factor of your own book for what is not stated otherwise"))),
        by: opt(label("by", text("the book that factor stands in"))),
      },
      {
        key: ["kind", "method", "in"],
        figures: "route",
        sizes: true,
        means: "How the cable is installed. Several lines make a route of several sections: the worst of them governs.",
        background:
          "30 °C ambient and no grouping unless stated. In the ground 20 °C, 2.5 K·m/W and 0.7 m, and cables or ducts that touch; `ambient`, `soil`, `depth` and `apart` say otherwise.",
        limits: "Appendix 4: Tables 4A2, 4B1 to 4B4, 4C1 to 4C3 and 52.2.",
        example: "route conduit 25 mm method B grouped 2",
      },
    ),
    length: once(
      { value: quantity("length", "the length of the cable run") },
      {
        figures: "length",
        sizes: true,
        means: "Length of the cable: to the furthest point of a radial, all the way round a ring.",
        example: "length 18 m",
      },
    ),
    run: often(
      { path: path("a path such as `A 7 m S1 6 m S2`") },
      {
        key: ["path"],
        figures: "length",
        inUse: true,
        sizes: true,
        means: "The run of the cable from point to point, with the length between them.",
        background:
          "The first run of a ring starts and ends at the board. A run that starts at a point is a spur from it. Expected readings are calculated from the runs.",
        example: "run A 7 m S1 6 m S2 9 m A",
      },
    ),
    points: once({ count: count("how many") }, { means: "The number of points on the circuit.", example: "points 8" }),
    spurs: once({ count: count("how many") }, { means: "The number of points on unfused spurs.", example: "spurs 1" }),
    fused: often(
      { point: ref("point", "the point"), rating: quantity("rating", "the fuse fitted") },
      {
        key: ["point"],
        paper: "fused spur",
        means: "A fused connection unit at a point, and its fuse.",
        limits: "Appendix 15: 13 A at most.",
        example: "fused S5 3 A",
      },
    ),
    "outlet-rcd": often(
      { point: ref("point", "the point"), ...rcdParams },
      {
        key: ["point"],
        figures: "rcd",
        paper: "RCD in an outlet",
        means: "An RCD in the socket-outlet or connection unit of one point.",
        background:
          "It protects what is plugged in or connected there, not the cable to it nor the other points: the circuit is still asked for an RCD of its own. Its tests name the point: `rcd at S3 30 mA 1x 24 ms`.",
        limits: "BS 7288; Regulation 531.3.4.",
        example: "outlet-rcd S3 BS 7288 13 A 30 mA type A",
      },
    ),
    "floor-area": once(
      { value: quantity("floor", "the floor area served") },
      {
        figures: "floor",
        paper: "floor area",
        means: "The floor area the circuit serves.",
        limits: "Conventional circuits (guidance): 100 m² for a ring.",
        example: "floor-area 62 m²",
      },
    ),
    serves: once(
      { uses: many(choice(list.uses, "what it supplies")) },
      {
        inUse: true,
        sizes: true,
        means: "What the circuit supplies. Disconnection time, voltage-drop limit and RCD requirements follow from it.",
        example: "serves sockets",
      },
    ),
    place: once(
      {
        places: many(choice(list.places, "where it is")),
        zone: opt(
          label(
            "zone",
            many(choice(list.zones, "a zone of the bath, shower or pool that the circuit supplies equipment in")),
          ),
        ),
        distance: opt(label("distance", quantity("length", "the distance of the nearest socket-outlet from zone 1"))),
      },
      {
        figures: "place",
        sizes: true,
        means: "The special location (Part 7) the circuit supplies, and the zones in which it has equipment.",
        background:
          "Without this line the board's `place` applies. `outdoors` and `skilled-only` are added to it; any other word replaces it.",
        limits: "Part 7.",
        example: "place bathroom zone 2 outside",
      },
    ),
    "protective-measure": protectiveMeasure,
    ingress: once(
      { code: choice(list.ingress, "the code on the equipment") },
      {
        paper: "IP code",
        means: "The lowest IP code of the equipment on this circuit.",
        background:
          "The second numeral is protection against water: 4 splashes, 5 jets, 7 immersion. X means not stated.",
        limits: "Regulation 512.2; Part 7 for zones and special locations.",
        example: "ingress IPX4",
      },
    ),
    "supplementary-bonding": once(
      { fitted: choice(list.fitted, "whether it is fitted"), why: opt(text("the reason")) },
      {
        paper: "supplementary bonding",
        means: "Whether supplementary bonding is fitted in the location this circuit supplies.",
        background:
          "It may be omitted in a bathroom where every circuit disconnects in time, every circuit is protected by a 30 mA RCD, and all extraneous-conductive-parts are effectively connected to the main bonding.",
        limits: "Regulation 415.2; 701.415.2, 702.415.2 and 705.415.2.1 for special locations.",
        example: 'supplementary-bonding not-fitted "Plastic pipes throughout"',
      },
    ),
    earthing: once(
      { system: choice(list.ownEarthings, "the earthing") },
      {
        sizes: true,
        means: "This circuit is earthed by an electrode of its own, not by the supply.",
        background:
          "Its protective conductor must not be connected to the supply's earth anywhere. An RCD provides disconnection.",
        limits: "Regulations 411.5 and 722.411.4.1.",
        example: "earthing TT",
      },
    ),
    electrode: electrodeRow("The circuit's own earth electrode, and its resistance (RA)."),
    "open-PEN": once(
      { what: text("the device, and where it is") },
      {
        paper: "open PEN disconnection",
        means:
          "The device that disconnects the circuit, protective conductor included, if the PEN conductor of the supply becomes open circuit.",
        background:
          "With an open-circuit PEN conductor, the supply's earth terminal and the body of a vehicle connected to it can rise towards 230 V.",
        limits: "Regulation 722.411.4.1.",
        example: 'open-PEN "Detector in the charging unit"',
      },
    ),
    load: often(
      {
        power: opt(quantity("power", "its power")),
        current: opt(quantity("current", "its current")),
        rated: opt(
          label("rated", quantity("voltage", "the voltage its power is stated at, if not that of the supply")),
        ),
        efficiency: opt(label("efficiency", quantity("share", "its efficiency: the power is then what it delivers"))),
        point: opt(label("at", ref("point", "the point it is on"))),
        title: opt(text("what it is")),
      },
      {
        key: ["point", "title"],
        figures: "load",
        inUse: true,
        sizes: true,
        means: "A load on the circuit, and the point it is on.",
        background:
          "Without a point it is taken to be at the far end, where the voltage drop is greatest. Heaters are often labelled at 240 V: write `rated 240 V`. Between lines the voltage is 400 V or more. A motor's plate gives the power at its shaft: write its `efficiency`.",
        example: 'load 9.5 kW rated 240 V "Shower"',
      },
    ),
    starting: once(
      {
        method: choice(list.starters, "how it is started"),
        current: opt(quantity("current", "the current while it starts")),
      },
      {
        paper: "starting current",
        means: "How the motor is started, and the current it takes meanwhile.",
        background: "From the maker's data. Without a current it is estimated from the design current.",
        limits: "Regulations 433.1.1 and 552.1.1; the device must not trip on it.",
        example: "starting direct 118 A",
      },
    ),
    overload: once(
      { setting: quantity("rating", "what it is set to") },
      {
        paper: "overload relay",
        sizes: true,
        means: "The overload relay of the motor on this circuit, and its setting.",
        background:
          "It protects motor and cable against overload where its setting is no higher than the cable's capacity; the device at the board then protects against faults only.",
        limits: "Regulations 433.1.1, 433.2.2 and 552.1.2.",
        example: "overload 21 A",
      },
    ),
    drivers: once(
      {
        count: count("how many LED drivers or electronic ballasts"),
        most: opt(label("at-most", count("how many of them their maker allows on this device"))),
      },
      {
        paper: "LED drivers",
        means: "The LED drivers on the circuit, and how many their maker allows on such a device.",
        background: "All of them charge their capacitors in the same instant, and a breaker takes that for a fault.",
        example: "drivers 24 at-most 32",
      },
    ),
    "dc-detection": once(
      { what: text("what detects it, and where") },
      {
        paper: "d.c. detection",
        means: "What disconnects the charging point when smooth direct current above 6 mA flows to earth.",
        limits: "Regulation 722.531.3.101.",
        example: 'dc-detection "In the charging unit, BS IEC 62955"',
      },
    ),
    inverter: once(
      {
        separation: choice(list.separations, "whether it separates its d.c. side from the a.c. side"),
        allows: opt(label("allows", choice(list.rcdTypes, "the RCD type its maker allows"))),
        by: opt(label("by", text("its maker's letter or data sheet"))),
      },
      {
        paper: "inverter",
        means: "The inverter of a photovoltaic generator or battery, and the type of RCD that goes with it.",
        background:
          "Without separation smooth direct current can flow into a fault and blind a type A RCD: it is type B then, unless the maker declares that another type will do.",
        limits: "Regulation 712.530.3.101.",
        example: 'inverter unseparated allows A by "Maker\'s declaration"',
      },
    ),
    "load-control": once(
      { what: text("what limits the load, and how") },
      {
        paper: "load control",
        means: "What keeps the load of this circuit within the demand it is counted with.",
        limits: "Regulation 722.311.201.",
        example: 'load-control "Meter clamp sheds the charger above 60 A"',
      },
    ),
    "power-factor": once(
      { value: quantity("share", "the power factor in per cent: 85 % is 0.85") },
      {
        paper: "power factor",
        sizes: true,
        means: "The power factor of the loads. 100 % if left out.",
        background: "The lower it is, the more current a load in kW takes.",
        example: "power-factor 85 %",
      },
    ),
    diversity: once(
      { share: quantity("share", "the share in use at the same time") },
      {
        means:
          "The share of the circuit's design current that counts towards the demand, by the designer's own judgement.",
        background: "Without it the published table for the kind of premises and circuit is used.",
        limits: "Regulation 311.1.",
        example: "diversity 60 %",
      },
    ),
    "neutral-harmonics": once(
      { value: quantity("percent", "the third harmonic, as a share of the line current") },
      {
        paper: "third harmonic",
        sizes: true,
        means: "Third-harmonic content of the line current of a three-phase circuit.",
        background: "Third harmonics do not cancel in the neutral: they add.",
        limits: "Appendix 4, section 5.5; Regulation 524.2.",
        example: "neutral-harmonics 20 %",
      },
    ),
    leakage: once(
      { value: reading("leakage", "the protective conductor current") },
      {
        reads: {
          key: [],
          again: false,
          name: "protective conductor current",
          test: "the protective conductor current",
        },
        figures: "leakage",
        means:
          "Protective conductor current (standing earth leakage) of the circuit with its equipment in normal service.",
        background:
          "Filters in computers, LED drivers and variable-speed drives cause some continuously, and too much of it trips an RCD without a fault (unwanted tripping). Measured with a leakage clamp meter round line and neutral together, or added up from the makers' data: then write `declared`.",
        limits:
          "Regulation 531.3.2: at most 30 % of IΔn for all circuits of one RCD. Regulation 543.7 applies above 10 mA.",
        example: "leakage 3.5 mA",
      },
    ),
    "duplicate-cpc": once(
      { size: quantity("csa", "its size") },
      {
        paper: "second protective conductor",
        means: "A second protective conductor for the circuit, connected to separate terminals.",
        background:
          "Where a high protective conductor current flows continuously, exposed metal becomes live if a single protective conductor breaks. A second one keeps it earthed.",
        limits: "Regulation 543.7.1.203.",
        example: "duplicate-cpc 4 mm²",
      },
    ),
    Ib: once(
      { value: quantity("current", "the design current") },
      {
        figures: "load",
        paper: "design current Ib",
        inUse: true,
        sizes: true,
        means: "Design current: the current of the load in normal service.",
        limits: "Regulation 433.1.1: Ib ≤ In ≤ Iz.",
        example: "Ib 13.0 A",
      },
    ),
    disconnect: once(
      { time: quantity("duration", "the time") },
      {
        figures: "time",
        paper: "must disconnect",
        means: "The disconnection time the design is based on, if not the one the circuit would otherwise have.",
        limits: "Table 41.1; 411.3.2.",
        example: "disconnect 5 s",
      },
    ),
    "max-Zs": once(
      { value: quantity("loop", "the limit") },
      {
        figures: "written-limit",
        paper: "greatest Zs, as written",
        means: "The maximum Zs as written on the record; checked against the standard.",
        example: "max-Zs 1.37 Ω",
      },
    ),
    "parallel-path": once(
      { reason: text("what the path is") },
      {
        paper: "parallel path",
        means: "A parallel path to earth, which makes Zs read lower than the cable alone would.",
        example: 'parallel-path "Motor frame bolted to bonded steel"',
      },
    ),
    terminals: once(
      { temperature: quantity("temperature", "the highest temperature the terminals are rated for") },
      {
        means: "The temperature the terminals at both ends of the cable are rated for. 70 °C if left out.",
        background:
          "A 90 °C cable at its full current is hotter than the terminals of ordinary switchgear and accessories are rated for.",
        limits: "Regulation 512.1.5; the notes to Tables 4E1A, 4E2A and 4E4A.",
        example: "terminals 90 °C",
      },
    ),
    "shared-neutral": once(
      { reason: text("which circuit it is shared with, and where") },
      {
        paper: "neutral shared with",
        means: "This circuit's neutral was found to be shared with another circuit: a borrowed neutral.",
        background:
          "The usual readings do not show it. With this circuit isolated, its neutral can still be live from the other circuit, and RCDs trip without a fault.",
        limits: "Regulation 314.4.",
        example: 'shared-neutral "Way 5, at the two-way switch of the landing"',
      },
    ),
    vulnerable,
    "class-II": once(
      { reason: opt(text("how this is ensured")) },
      {
        paper: "class II",
        means: "Only class II equipment is on this circuit.",
        limits: "Section 412.",
        example: 'class-II "Label at the board"',
      },
    ),
    ...signatories,
    dead: often(testHeader, {
      key: ["on"],
      inUse: true,
      means: "Dead tests on one day. The latest reading of each kind counts; earlier ones are kept for comparison.",
      background:
        "Isolate and lock off, prove the tester, prove dead, prove the tester again. Then continuity, the ring, insulation, polarity.",
      opens: "dead",
      example:
        "dead 2026-03-04 with M1 {\n  R1+R2        0.41 Ω\n  insulation   500 V  L-N 310 MΩ  L-E >999 MΩ  N-E >999 MΩ\n  polarity     ok\n}",
    }),
    live: often(testHeader, {
      key: ["on"],
      inUse: true,
      means: "Live tests on one day. The latest reading of each kind counts; earlier ones are kept for comparison.",
      background: "Only after the dead tests are satisfactory, and only by those competent to work live.",
      opens: "live",
      example: "live 2026-03-05 with M1 {\n  Zs           0.62 Ω\n  rcd          30 mA 1x 24 ms\n  test-button  ok\n}",
    }),
    ...record,
  },

  dead: {
    temperature,
    ends: once(
      {
        r1: label("r1", reading("conductor", "line, end to end")),
        rn: label("rn", reading("conductor", "neutral, end to end")),
        r2: opt(label("r2", reading("conductor", "protective conductor, end to end"))),
      },
      {
        reads: { key: [], again: true, name: "{arg} end to end", test: "the ring's ends" },
        figures: "ring-ends",
        entry: "apart",
        means: "End-to-end readings of a ring: each conductor measured from one leg to the other.",
        background:
          "Line and neutral of the same size should read the same; a smaller protective conductor reads higher by the ratio of the sizes.",
        limits: "Regulation 643.2.1; r1 and rn within 0.05 Ω (common practice).",
        example: "ends r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω",
      },
    ),
    at: often(
      {
        point: ref("point", "the point"),
        "L-N": opt(label("L-N", reading("conductor", "line to neutral, cross-connected"))),
        "L-E": opt(label("L-E", reading("conductor", "line to protective conductor, cross-connected"))),
        R2: opt(label("R2", reading("conductor", "the protective conductor alone, with a wandering lead"))),
        polarity: opt(label("polarity", verdict(list.verdicts, "the result"))),
      },
      {
        reads: { key: ["point"], again: true, name: "{arg} at {point}", test: "this point" },
        figures: "dead-point",
        means: "Readings at a point, with the legs cross-connected at the board.",
        background:
          "Every point on the ring should read about a quarter of the sum of the two end-to-end readings; a spur reads higher by its own cable.",
        limits: "Each within 0.05 Ω of the expected reading (common practice).",
        example: "at S1 L-N 0.22 Ω L-E 0.29 Ω polarity ok",
      },
    ),
    "R1+R2": once(
      {
        value: reading("conductor", "line and protective conductor together"),
        ...onEachLine("conductor"),
        polarity: opt(label("polarity", verdict(list.verdicts, "the result"))),
      },
      {
        reads: { key: [], again: true, name: "R1+R2" },
        figures: "continuity",
        means: "Resistance of line and protective conductor together, to the furthest point.",
        background:
          "Line and protective conductor are linked at the board and measured at each point; the highest reading is recorded. It proves polarity as well, which may stand on the same line. Of three lines each may be written behind it: `R1+R2 0.42 Ω L1 0.40 Ω L2 0.42 Ω L3 0.41 Ω`.",
        limits: "Regulation 643.2.1.",
        example: "R1+R2 0.41 Ω",
      },
    ),
    R2: once(
      { value: reading("conductor", "the protective conductor alone") },
      {
        reads: { key: [], again: true, name: "R2" },
        figures: "cpc",
        means: "Resistance of the protective conductor alone, measured with a wandering lead.",
        limits: "Regulation 643.2.1.",
        example: "R2 0.26 Ω",
      },
    ),
    insulation,
    polarity,
    ...testRecord,
  },

  live: {
    temperature,
    Zs: once(
      {
        value: reading("loop", "the loop impedance"),
        ...onEachLine("loop"),
        method: opt(choice(list.loopMethods, "how it was measured, behind an RCD")),
      },
      {
        reads: { key: [], again: true, name: "Zs" },
        figures: "loop",
        means: "Earth fault loop impedance at the furthest point of the circuit.",
        background:
          "Measured, or Zdb of the board plus R1+R2: then write `calculated`. Of three lines the highest counts, and each may be written behind it: `Zs 0.52 Ω L1 0.50 Ω L2 0.52 Ω L3 0.51 Ω`.",
        limits:
          "Regulation 411.4.4 and Tables 41.2 to 41.4; a cold reading is compared with 80 % of them, or corrected for temperature.",
        example: "Zs 0.62 Ω",
      },
    ),
    at: often(
      {
        point: ref("point", "the point"),
        Zs: opt(label("Zs", reading("loop", "the loop impedance there"))),
        method: opt(choice(list.loopMethods, "how it was measured, behind an RCD")),
        polarity: opt(label("polarity", verdict(list.verdicts, "the result"))),
      },
      {
        reads: { key: ["point"], again: true, name: "{arg} at {point}", test: "this point" },
        figures: "loop",
        means: "Live readings at a point.",
        example: "at S1 Zs 0.58 Ω",
      },
    ),
    ...faultCurrents,
    leakage: clampLeakage,
    rcd: rcdTestOfWay,
    "trip-current": often(
      {
        name: nameOfRcd,
        point: atOutlet,
        value: reading("tripCurrent", "the residual current it tripped at"),
        waveform: opt(choice(list.waveforms, "the waveform of the test current")),
      },
      {
        reads: {
          key: ["name", "point", "waveform"],
          how: ["waveform"],
          again: true,
          name: "trip current[ of {name}][ at {point}][ {waveform}]",
          test: "the trip current",
        },
        figures: "trip-current",
        entry: "usual",
        means: "The residual current at which the RCD tripped in a ramp test.",
        limits:
          "BS EN 61008: with a.c. 50 to 100 % of IΔn for every type; with pulsating d.c. 35 to 140 % for types A, F and B; type B with smooth d.c. 50 to 200 %.",
        example: "trip-current 22 mA",
      },
    ),
    "test-button": testButton,
    "afdd-button": once(
      { verdict: verdict(list.pressed, "the result") },
      {
        reads: { key: [], again: true, name: "AFDD test button", test: "the AFDD's test button" },
        figures: "verdict",
        means: "The result of pressing the AFDD's test button.",
        limits: "Regulation 643.10.",
        example: "afdd-button ok",
      },
    ),
    "afdd-test": once(
      { verdict: verdict(list.verdicts, "the result") },
      {
        reads: { key: [], again: true, name: "AFDD by instrument", test: "the AFDD" },
        figures: "verdict",
        entry: "usual",
        means: "The result of a test of the AFDD by an instrument that simulates an arc, or by its own report.",
        limits: "The maker's instructions; BS EN 62606.",
        example: "afdd-test ok",
      },
    ),
    "rcm-alarm": once(
      {
        value: reading("tripCurrent", "the residual current it alarmed at"),
        time: opt(label("after", reading("tripTime", "the time to the alarm"))),
      },
      {
        reads: { key: [], again: true, name: "residual current monitor", test: "the residual current monitor" },
        figures: "leakage",
        means: "The residual current at which a monitor (RCM) gave its alarm, and after what time.",
        limits: "The setting of the monitor; BS EN 62020.",
        example: "rcm-alarm 24 mA after 400 ms",
      },
    ),
    thermal,
    polarity,
    "phase-sequence": rotation,
    voltage: once(
      { value: reading("voltage", "the voltage") },
      {
        reads: { key: [], again: false, name: "voltage" },
        figures: "voltage",
        entry: "usual",
        means: "The voltage measured at the circuit.",
        example: "voltage 236 V",
      },
    ),
    function: once(
      { verdict: verdict(list.verdicts, "the result") },
      {
        reads: { key: [], again: false, name: "function" },
        figures: "verdict",
        means: "Functional test: whether the equipment works as intended.",
        limits: "Regulation 643.10.",
        example: "function ok",
      },
    ),
    ...testRecord,
  },

  containment: {
    section: often(
      {
        length: quantity("length", "its length"),
        bends: opt(label("bends", count("the bends in it"))),
      },
      {
        key: ["length", "bends"],
        means: "A length of the conduit between two draw-in points, and its bends.",
        background: "Cables are drawn in one section at a time: the worst section decides how many will fit.",
        limits: "Regulation 522.8; conduit factors of the guidance to it.",
        example: "section 6 m bends 2",
      },
    ),
    note: record.note,
    detail: record.detail,
  },

  boardDead: { temperature, bonding, insulation: boardInsulation, polarity, ...testRecord },

  boardLive: {
    Zdb: once(
      { value: reading("loop", "the loop impedance at the board") },
      {
        reads: { key: [], again: true, name: "Zdb" },
        figures: "board-loop",
        means: "Earth fault loop impedance at this board.",
        limits: "Regulation 411.4.",
        example: "Zdb 0.31 Ω",
      },
    ),
    ...faultCurrents,
    rcd: rcdTest,
    "trip-current": often(
      {
        name: opt(ref("rcd", "the RCD, where the board has several", list.unnamedRcds)),
        value: reading("tripCurrent", "the residual current it tripped at"),
        waveform: opt(choice(list.waveforms, "the waveform of the test current")),
      },
      {
        reads: {
          key: ["name", "waveform"],
          how: ["waveform"],
          again: true,
          name: "trip current[ of {name}][ {waveform}]",
          test: "the trip current",
        },
        figures: "trip-current",
        entry: "usual",
        means: "The residual current at which an RCD tripped in a ramp test.",
        limits:
          "BS EN 61008: with a.c. 50 to 100 % of IΔn for every type; with pulsating d.c. 35 to 140 % for types A, F and B; type B with smooth d.c. 50 to 200 %.",
        example: "trip-current east 22 mA",
      },
    ),
    "test-button": often(
      {
        name: opt(ref("rcd", "the RCD, where the board has several", list.unnamedRcds)),
        verdict: verdict(list.pressed, "the result"),
      },
      {
        reads: { key: ["name"], again: true, name: "test button[ of {name}]", test: "the test button" },
        figures: "verdict",
        means: "The result of pressing an RCD's test button.",
        limits: "Regulation 643.10.",
        example: "test-button east ok",
      },
    ),
    leakage: clampLeakage,
    thermal,
    voltage: once(
      { value: reading("voltage", "the voltage") },
      {
        reads: { key: [], again: false, name: "voltage" },
        figures: "voltage",
        entry: "usual",
        means: "The voltage measured at the board.",
        example: "voltage 236 V",
      },
    ),
    polarity,
    "phase-sequence": rotation,
    ...testRecord,
  },
} as const satisfies Record<string, Record<string, WordRow>>;

/** A way may name a cable type instead of describing the cable. */
function optionalCable() {
  return {
    ...cableParams,
    construction: opt(cableParams.construction),
    line: opt(cableParams.line),
  } as const;
}

function containmentRow() {
  return often(
    {
      name: define("containment", "a short name"),
      kind: choice(list.containments, "conduit or trunking"),
      size: quantity("size", "the size of the conduit, or the width of the trunking"),
      depth: opt(label("by", quantity("size", "the depth of the trunking"))),
      length: opt(label("length", quantity("length", "the length between draw-in points"))),
      bends: opt(label("bends", count("the bends between draw-in points"))),
      made: opt(choice(list.containmentMakes, "what it is made of")),
      spare: opt(label("spare", quantity("percent", "the space to keep free, as a share of the cables in it"))),
      title: opt(text("the place it runs through")),
    },
    {
      figures: "containment",
      means: "A conduit or trunking that several circuits share. A way states `in` and its name on its route.",
      background:
        "Each cable has a factor, and the containment has one by its size, length and bends: the sum of the cable factors must not exceed it. Write several lengths between draw-in boxes as sections in its block.",
      limits: "Regulation 522.8; conduit and trunking factors of the guidance to it.",
      opens: "containment",
      blockOptional: true,
      example: "containment C1 conduit 25 mm length 6 m bends 2",
    },
  );
}

function electrodeRow(means: string) {
  return once(
    {
      type: opt(choice(list.electrodes, "what it is")),
      value: reading("electrode", "its resistance to earth"),
      method: opt(choice(list.electrodeMethods, "how it was measured")),
      at: opt(label("at", text("its place"))),
    },
    {
      reads: { key: [], again: true, name: "RA", test: "the earth electrode" },
      figures: "electrode",
      particular: { name: "Earth electrode", ifStated: true },
      means,
      background: "Above 200 Ω it may not be stable: dry or frozen soil raises it.",
      limits: "Regulation 411.5.3: RA × IΔn at most 50 V.",
      example: "electrode rod 84 Ω",
    },
  );
}

function inspectionRow() {
  return often(
    {
      kind: choice(list.inspectionKinds, "what it is for"),
      on: date("its first or only day"),
      to: opt(label("to", date("its last day"))),
    },
    {
      key: ["kind", "on"],
      means: "An inspection: an initial verification, a periodic inspection, or the inspection of minor work.",
      background:
        "It answers for the tests of its days, and for those since the inspection before it; what was tested earlier stays under who signed then. Several stand in one schedule, and all are kept.",
      limits: "Chapters 64 and 65; Appendix 6.",
      opens: "inspection",
      example:
        'inspection periodic 2026-03-03 to 2026-03-05 {\n  client       "Mill Lane Housing"\n  reason       "Change of tenant"\n  extent       "All circuits; one accessory in five opened"\n  observation  1 C3  "No RCD for the lights"\n  outcome      satisfactory\n  next-inspection 2031-03-05 "Let dwelling: five years or change of tenant"\n  tested       by "K.A." 2026-03-05\n}',
    },
  );
}

function circuitTypeRow() {
  return often(
    {
      name: define("circuit-type", "a short name"),
      kind: opt(choice(list.wayKinds, "what kind of circuit it is")),
      title: opt(text("what it is")),
    },
    {
      means: "What several circuits have in common, described once: their device, cable, route and use.",
      background:
        "A way takes it over with `as` and its name; a line in the way itself goes before the same word of the type. Lengths, loads and readings are each circuit's own and are never shared.",
      opens: "circuitType",
      example:
        "circuit-type lights radial {\n  device       BS EN 61009 B10 10 kA 30 mA type A\n  cable        flat-twin line 1.5 mm² cpc 1.0 mm²\n  route        clipped method C\n  serves       lighting\n}",
    },
  );
}

function boardRow() {
  return often(
    { name: define("board", "a short name"), title: opt(text("what it is called")) },
    {
      means: "A distribution board and its ways.",
      opens: "board",
      example: 'board A "Main board" {\n  fed-from     supply\n  main-switch  BS EN 60947-3 100 A\n}',
    },
  );
}

/** Facts of the design that alike circuits share. Lengths, loads and readings are each circuit's own. */
const sharedByCircuits = [
  "device",
  "behind",
  "rcd",
  "afdd",
  "cable",
  "route",
  "serves",
  "place",
  "ingress",
  "supplementary-bonding",
  "open-PEN",
  "inverter",
  "power-factor",
  "diversity",
  "neutral-harmonics",
  "disconnect",
  "terminals",
  "class-II",
  "note",
  "detail",
] as const satisfies readonly (keyof typeof blocks.way)[];

const picked = <T extends object, K extends keyof T & string>(rows: T, words: readonly K[]): Pick<T, K> =>
  Object.fromEntries(words.map((word) => [word, rows[word]])) as Pick<T, K>;

const whole = { ...blocks, circuitType: picked(blocks.way, sharedByCircuits) } as const;

export const vocabulary: typeof whole = whole;
export type Vocabulary = typeof whole;
export type BlockKind = keyof Vocabulary;

export const blockKinds = Object.keys(vocabulary) as BlockKind[];

/** Blocks that hold ways; text is divided at their lines, and each is read on its own. */
export const containers: ReadonlySet<string> = new Set(["installation", "board"]);

/** Words whose line can only begin a new part of the file. One of them inside an open block ends that block. */
export const structural: ReadonlySet<string> = new Set([
  "wayfile",
  "use",
  "installation",
  "supply",
  "board",
  "way",
  "instrument",
  "cable-type",
  "device-figures",
  "circuit-type",
]);

/** Words that open a block in one place or another. */
export const opening: ReadonlySet<string> = new Set(
  Object.values(whole).flatMap((rows: Readonly<Record<string, WordRow>>) =>
    Object.entries(rows).flatMap(([word, row]) => (row.opens ? [word] : [])),
  ),
);

/** Words that begin a line in one block or another. */
export const facts: ReadonlySet<string> = new Set(Object.values(whole).flatMap(Object.keys));

/** Words for where a reading came from; without one it was measured. */
export const provenances = {
  measured: "Read on an instrument.",
  declared: "Stated by the distributor or a maker.",
  calculated: "Calculated, not measured.",
  "from-record": "Taken from an earlier record; name it.",
} as const;
export type Provenance = keyof typeof provenances;

/** What is written behind a reading that was recorded wrongly: what stood there, and why. */
export const corrections = {
  was: "What was recorded here before it was corrected, with the reason in quotes.",
} as const;

/** Signs for what was not measured. */
export const absences = {
  LIM: "A limitation: not tested, for the reason given.",
  "N/A": "Does not apply to this circuit.",
} as const;

const choicesOf = ({ params }: WordRow): string[] =>
  Object.values(params).flatMap(({ accepts }) => (accepts.kind === "choice" ? Object.keys(accepts.choices) : []));

/** Every word of a line and of a choice, as it stands in the table. */
const written: ReadonlyMap<string, string> = new Map(
  blockKinds
    .flatMap((kind) => Object.entries<WordRow>(vocabulary[kind]))
    .flatMap(([word, row]) => [word, ...choicesOf(row)])
    .map((word) => [word, word]),
);

/** A word that was cut out of a text, as the string of the table: one that is compared at a glance and kept once. */
export const asInTable = (word: string): string => written.get(word) ?? word;

const isBlockKind = (name: string): name is BlockKind => Object.hasOwn(vocabulary, name);

/** The kind of block that a word opens, if it opens one. */
export const openedBy = (row: WordRow | undefined): BlockKind | undefined =>
  row?.opens !== undefined && isBlockKind(row.opens) ? row.opens : undefined;

/** A row by its block and word, for code that walks the table. */
export function rowOf(block: BlockKind, word: string): WordRow | undefined {
  const rows: Readonly<Record<string, WordRow>> = vocabulary[block];
  return Object.hasOwn(rows, word) ? rows[word] : undefined;
}
