import type { MeasuredKind } from "./quantities.ts";
/** Closed lists of words, each with the meaning shown on hover and in completion. */

export const earthings = {
  "TN-S": "Separate neutral and protective conductor from the source; the earth is often the cable sheath.",
  "TN-C-S": "Neutral and protective conductor combined (PEN) in the supply, separate in the installation (PME).",
  "TN-C": "Neutral and protective conductor combined throughout.",
  TT: "The installation has its own earth electrode.",
  IT: "The source is not earthed, or earthed through an impedance.",
} as const;

export const stages = {
  design: "Designed. No tests are required yet.",
  installed: "Installed, not yet tested.",
  "dead-tested": "Dead tests are complete: continuity, ring, insulation, polarity.",
  tested: "Dead and live tests are complete. Any test not recorded is reported as missing.",
} as const;

export const works = {
  new: "A new installation: initial verification.",
  addition: "An addition or alteration to an existing installation.",
  existing: "An existing installation: periodic inspection and testing.",
} as const;

export const partWorks = {
  new: "New work of this visit: tested completely and checked in full.",
  altered: "An existing part that this work changes: tested completely and checked in full.",
  existing: "It was there before: what came later as a requirement is no fault, and this work need not test it.",
  "not-part": "No part of this work: recorded as it was found, and only a reading that fails is reported.",
} as const;

export const inspectionKinds = {
  initial: "Initial verification of new work, an addition or an alteration.",
  periodic: "Periodic inspection and testing of an existing installation.",
  minor: "Minor work: a change to an existing circuit that adds no circuit.",
} as const;

export const observationCodes = {
  C1: "Danger present: made safe, or reported, at once.",
  C2: "Potentially dangerous: urgent remedial work.",
  C3: "Improvement recommended.",
  FI: "Further investigation without delay: a sign of danger that this inspection could not settle.",
} as const;

export const inspectionResults = {
  ok: "Inspected, and acceptable.",
  ...observationCodes,
  "not-verified": "Could not be verified.",
} as const;

export const limitationKinds = {
  agreed: "Agreed with the person who ordered the inspection before it began.",
  operational: "Met on the day.",
} as const;

export const outcomes = {
  satisfactory: "Fit for continued service.",
  unsatisfactory: "Not fit for continued service until the observations are put right.",
} as const;

export const additionsSeen = {
  seen: "Additions or alterations are apparent.",
  "none-seen": "None are apparent.",
  "not-apparent": "It cannot be seen whether there are any.",
} as const;

export const recordsHeld = {
  held: "Earlier records are available.",
  "not-held": "No earlier records are available.",
} as const;

export const existingParts = {
  earthing: "The means of earthing and the earthing conductor.",
  bonding: "Main protective bonding.",
  load: "Whether supply, tails, switchgear and feeders carry the added load.",
  "fault-level": "Whether the devices interrupt the fault current.",
  safety: "That the work does not impair the safety of what was there.",
} as const;

export const adequacies = {
  adequate: "It is sufficient for the work.",
  inadequate: "It is not: say what is missing.",
} as const;

export const premises = {
  dwelling: "A house or flat.",
  "shared-house": "A house in multiple occupation.",
  student: "Purpose-built student accommodation.",
  "care-home": "A care home.",
  "tall-residential": "A higher-risk residential building.",
  commercial: "Shops, offices and the like.",
  industrial: "Workshops and factories.",
  agricultural: "Farms and horticulture.",
  outbuilding: "A garage, shed or other building beside a dwelling.",
} as const;

/** What protects against electric shock instead of automatic disconnection of the supply. */
export const protectiveMeasures = {
  separation: "Electrical separation behind an isolating transformer (413).",
  selv: "A source of separated extra-low voltage (414).",
  pelv: "A source of protective extra-low voltage, earthed (414).",
  it: "An IT system behind a transformer, with an insulation monitor (411.6).",
  dc: "Direct current.",
} as const;

export const supplySources = {
  public: "The distributor's low-voltage network.",
  private: "The installation's own transformer or generator.",
} as const;

export const phaseCounts = {
  single: "One line conductor and neutral.",
  three: "Three line conductors.",
} as const;

export const phases = {
  L1: "On line 1.",
  L2: "On line 2.",
  L3: "On line 3.",
  three: "On all three lines.",
} as const;

export const linesOfThree = {
  L1: "On line 1.",
  L2: "On line 2.",
  L3: "On line 3.",
} as const;

export const wayKinds = {
  ring: "A ring final circuit: it starts and ends at the same device.",
  radial: "A radial final circuit.",
  feeder: "A distribution circuit that feeds another board.",
  spare: "A way with nothing on it.",
} as const;

export const rcdTypes = {
  AC: "Detects sinusoidal a.c. residual current only.",
  A: "As AC, and pulsating d.c. with up to 6 mA of smooth d.c. superimposed.",
  F: "As A, and the mixed frequencies of single-phase drives.",
  B: "As F, and smooth d.c.",
} as const;

export const delays = {
  delayed: "A time-delayed (S) device, for selectivity with RCDs downstream.",
} as const;

export const directions = {
  bidirectional: "May be fed from either side.",
  unidirectional: "Must be fed from its line side only.",
} as const;

export const curves = {
  gG: "A general-purpose fuse link.",
  gM: "A fuse link for motor circuits.",
  "back-up": "Back-up protected: interrupts the fault together with the named device upstream.",
} as const;

export const oldTypes = {
  "type-1": "A breaker to BS 3871 that trips instantaneously between 2.7 and 4 times its rating.",
  "type-2": "A breaker to BS 3871 that trips instantaneously between 4 and 7 times its rating.",
  "type-3": "A breaker to BS 3871 that trips instantaneously between 7 and 10 times its rating.",
  "type-4": "A breaker to BS 3871 that trips instantaneously between 10 and 50 times its rating.",
} as const;

export const constructions = {
  singles: "Single-core insulated conductors, in conduit or trunking.",
  "flat-twin": "Flat twin cable with a bare protective conductor.",
  multicore: "Round sheathed cable of two or more cores.",
  armoured: "Steel wire armoured cable.",
  mineral: "Mineral-insulated, copper-sheathed cable.",
  flex: "A flexible cord.",
  "busbar-trunking": "Busbar trunking to BS EN 61439-6, by its maker's figures; a cpc with a size is of copper.",
} as const;

export const fireBehaviours = {
  "fire-resisting": "It keeps supplying its load in a fire: a cable to BS 7629-1, BS 7846 or BS 8592.",
} as const;

export const materials = {
  copper: "Copper conductors.",
  aluminium: "Aluminium conductors.",
} as const;

export const wires = {
  solid: "Each conductor is one solid wire.",
  stranded: "Each conductor is stranded, and takes slightly more space.",
} as const;

export const containments = {
  conduit: "A conduit; its size is the outside diameter.",
  trunking: "A trunking; its size is width by depth.",
} as const;

export const containmentMakes = {
  steel: "Rigid steel; it may be used as the protective conductor.",
  plastic: "Plastic; it cannot be used as a protective conductor.",
  flexible: "Flexible or pliable; it must not be used as a protective conductor.",
} as const;

export const earthingMetals = {
  copper: "A conductor of copper.",
  aluminium: "A conductor of aluminium.",
  steel: "A conductor of steel.",
} as const;

export const buriedIn = {
  buried: "Buried in the ground.",
} as const;

export const soilProtections = {
  corrosion: "Protected against corrosion by a sheath, not against mechanical damage.",
  damage: "Protected against mechanical damage, not against corrosion.",
  both: "Protected against corrosion and mechanical damage.",
} as const;

export const shielded = {
  protected: "Mechanically protected: in conduit or trunking, or by a sheath.",
} as const;

export const carried = {
  line: "The line conductors.",
  neutral: "The neutral.",
  cpc: "The protective conductor.",
} as const;

export const cpcMeans = {
  armour: "The cable's steel wire armour is the protective conductor.",
  conduit: "The steel conduit is the protective conductor.",
  trunking: "The steel trunking is the protective conductor.",
  sheath: "The copper sheath is the protective conductor.",
  casing: "The casing of the busbar trunking is the protective conductor.",
  none: "There is no protective conductor.",
} as const;

export const routeKinds = {
  conduit: "In conduit.",
  trunking: "In trunking.",
  clipped: "Clipped to a surface.",
  tray: "On a perforated tray.",
  ladder: "On a ladder or cleats.",
  "free-air": "In free air, spaced from the wall.",
  overhead: "Overhead outdoors, on insulators or a catenary wire.",
  wall: "Within a wall or partition.",
  ceiling: "Above a ceiling.",
  floor: "Under a floor.",
  duct: "In a duct in the ground.",
  buried: "Direct in the ground.",
} as const;

export const methods = {
  A: "In conduit in a thermally insulating wall.",
  B: "In conduit or trunking on a wall.",
  C: "Clipped direct.",
  D: "In the ground.",
  E: "Multicore in free air or on a tray.",
  F: "Single-core cables touching, in free air.",
  "100": "Flat cable above a ceiling, covered by insulation of up to 100 mm.",
  "101": "Flat cable above a ceiling, covered by more than 100 mm of insulation.",
  "102": "Flat cable in an insulated stud wall, touching the inner face.",
  "103": "Flat cable in an insulated stud wall, not touching the inner face.",
} as const;

export const arrangements = {
  bunched: "Bunched, on a surface, or enclosed together.",
  layer: "In one layer on a wall or floor.",
  "tray-layer": "In one layer on a perforated tray.",
  "ladder-layer": "In one layer on a ladder.",
} as const;

export const starters = {
  direct: "Direct on line.",
  "star-delta": "In star first, then in delta.",
  "soft-start": "A soft starter raises the voltage.",
  drive: "A variable-speed drive.",
} as const;

export const framings = {
  "metal-frame": "The wall or partition has metal parts in it, other than fixings.",
} as const;

export const enclosures = {
  steel: "Steel, or another non-combustible material.",
  plastic: "Plastic, or another combustible material.",
  cabinet: "Plastic, inside a cabinet of non-combustible material.",
} as const;

export const uses = {
  sockets: "Socket-outlets for general use.",
  "outdoor-sockets": "Socket-outlets outdoors.",
  lighting: "Luminaires.",
  "emergency-lighting": "Emergency luminaires.",
  cooker: "A cooker or hob.",
  shower: "An instantaneous shower.",
  "water-heater": "A storage or immersion heater.",
  heating: "Space heating.",
  "floor-heating": "Heating cables or units in a floor.",
  mobile: "Mobile equipment that is not plugged into a socket.",
  motor: "A motor.",
  transformer: "A transformer: for 110 V tools, for control, or to isolate.",
  "heat-pump": "A heat pump.",
  "park-home": "A park home or residential caravan with a fixed connection.",
  "ev-charger": "A charging point for electric vehicles.",
  pv: "A photovoltaic generator.",
  storage: "A battery.",
  appliance: "One fixed appliance.",
  shaver: "A shaver supply unit with an isolating transformer.",
  laundry: "Washing machines and dryers.",
  alarms: "Smoke, fire or intruder alarms.",
  data: "Data and communications equipment.",
  ventilation: "Fans and ventilation.",
  lift: "A lift.",
  door: "A powered door or gate.",
  control: "Signalling and control.",
  selv: "Extra-low voltage (SELV or PELV).",
} as const;

/** What a circuit supplies. */
export type Use = keyof typeof uses;

export const places = {
  bathroom: "A room with a bath or shower.",
  outdoors: "Outdoors.",
  indoors: "Inside a building, as all that it serves.",
  public: "Outdoors within reach of the public: streets, parks, paths.",
  agricultural: "Where animals are kept or crops handled.",
  caravan: "A caravan or camping park.",
  marina: "A marina.",
  construction: "A construction site.",
  pool: "A swimming pool.",
  sauna: "A room with a sauna heater.",
  exhibition: "An exhibition, show or stand.",
  fairground: "Rides, booths and stalls of a fairground or circus.",
  "mobile-unit":
    "A mobile or transportable unit: a vehicle, trailer, container or cabin that is connected where it stands.",
  medical: "A medical location.",
  "fire-risk": "A location where what is processed or stored is a risk of fire.",
  "skilled-only": "Used by skilled or instructed persons only.",
  ordinary: "None of these, though the board's place is one.",
} as const;

export const zones = {
  "0": "In the water: inside the bath, the shower basin or the pool.",
  "1": "Above the bath or shower, or beside the pool.",
  "2": "Next to zone 1.",
  outside: "In the room, outside the zones.",
} as const;

export const ownEarthings = {
  TT: "An earth electrode of its own, separate from the supply's earth.",
} as const;

/** The second figure is the water: 1 and 2 drips, 3 spray, 4 splashes, 5 and 6 jets, 7 and 8 immersion. */
export const ingress = {
  IP20: "Fingers, no water.",
  IPX1: "Dripping water.",
  IPX2: "Dripping water, tilted.",
  IP22: "Fingers; dripping water, tilted.",
  IP23: "Fingers; spraying water.",
  IP24: "Fingers; splashing water.",
  IPX3: "Spraying water.",
  IPX4: "Splashing water.",
  IP41: "Wires; dripping water.",
  IP43: "Wires; spraying water.",
  IP44: "Wires; splashing water.",
  IP54: "Dust; splashing water.",
  IPX5: "Water jets.",
  IP55: "Dust; water jets.",
  IP56: "Dust; powerful water jets.",
  IPX6: "Powerful water jets.",
  IP65: "Dust-tight; water jets.",
  IP66: "Dust-tight; powerful water jets.",
  IPX7: "Temporary immersion.",
  IP67: "Dust-tight; temporary immersion.",
  IPX8: "Continuous immersion.",
  IP68: "Dust-tight; continuous immersion.",
} as const;

export const verdicts = {
  ok: "Tested, and correct.",
  wrong: "Tested, and incorrect.",
} as const;

export const pressed = {
  ok: "Pressed, and it tripped.",
  failed: "Pressed, and it did not trip.",
} as const;

export const services = {
  water: "The water service.",
  gas: "The gas service.",
  oil: "The oil line.",
  structure: "Structural metal.",
  heating: "Central heating or ducts.",
  lightning: "The lightning protection system.",
  other: "Another extraneous-conductive-part.",
  none: "None required: no extraneous-conductive-part enters. State why.",
} as const;

export const unbonded = {
  missing: "It enters, and is not bonded. State what was seen.",
} as const;

export const electrodes = {
  rod: "A driven rod.",
  tape: "Buried tape or wire.",
  plate: "A buried plate.",
  foundation: "Metal in the foundation.",
} as const;

export const fitted = {
  fitted: "Fitted.",
  "not-fitted": "Not fitted; state why.",
} as const;

export const surgeTypes = {
  T1: "Type 1: carries a part of a lightning current.",
  T2: "Type 2: for surges on the supply, at the board.",
  "T1-T2": "Type 1 and 2 in one.",
  T3: "Type 3: beside the equipment, downstream of a type 2.",
} as const;

export const neutralLinks = {
  linked: "Connected to earth at the source, or by a relay, while it supplies.",
  through: "That of the supply, which stays connected and earthed: a UPS in its line.",
  unlinked: "Not earthed.",
} as const;

export const separations = {
  separated: "At least simple separation between d.c. and a.c. side, such as a transformer.",
  unseparated: "No separation between d.c. and a.c. side.",
} as const;

export const poles = {
  "single-pole": "The line only.",
  "double-pole": "Line and neutral.",
  "three-pole": "All three lines, not the neutral.",
  "four-pole": "All three lines and the neutral.",
} as const;

export const waveforms = {
  sinusoidal: "Sinusoidal a.c., as instruments apply unless set otherwise.",
  pulsating: "Pulsating d.c., half-waves.",
  smooth: "Smooth d.c.",
} as const;

export const halfCycles = {
  "from-0": "Begun at 0°, with the rising half cycle.",
  "from-180": "Begun at 180°, with the falling half cycle.",
} as const;

export const loopMethods = {
  "no-trip": "A low current that leaves the RCD closed: reads some tenths of an ohm high at times.",
  "high-current": "The full test current, with no RCD in the loop or with it bridged.",
} as const;

export const electrodeMethods = {
  "by-probes": "Three or four terminals, with probes in the ground and the electrode disconnected.",
  "by-clamp": "A stakeless clamp; it needs a second path to earth.",
  "by-loop": "A loop tester at the origin: the electrode and the loop of the supply together.",
} as const;

export const spdsLeft = {
  "spd-in": "Surge protective devices could not be disconnected and were left in.",
} as const;

export const rotations = {
  ok: "L1, L2, L3: correct.",
  reversed: "Reversed.",
} as const;

export const joined = {
  joined: "Line and neutral joined together and tested to earth.",
} as const;

/** RCDs that have no name of their own. */
export const unnamedRcds = {
  "main-switch": "The main switch of the board, where it is an RCD.",
} as const;

export const noTrip = {
  "no-trip": "It did not trip. At half IΔn it must not.",
} as const;

export const measuredKinds = {
  continuity: "Continuity: low resistances of conductors, dead.",
  insulation: "Insulation resistance.",
  loop: "Earth fault loop impedance.",
  "rcd-time": "The trip time of an RCD.",
  "trip-current": "The residual current an RCD trips at, in a ramp test.",
  fault: "Prospective fault current.",
  electrode: "The resistance of an earth electrode. As for loop impedance if left out.",
  leakage: "The current in a protective conductor, by a clamp.",
  voltage: "Voltage.",
} as const satisfies Record<MeasuredKind, string>;

export const rangeKinds = {
  continuity: "Continuity: low resistances of conductors, dead.",
  insulation: "Insulation resistance.",
  loop: "Earth fault loop impedance.",
} as const;

export const lastDigits = {
  digits: "Digits of the last figure shown: 2 digits of a reading of 0.62 Ω are 0.02 Ω.",
} as const;

export const fieldBlocks = {
  installation: "In the installation.",
  supply: "In the supply.",
  board: "In each board.",
  way: "In each way that is not spare.",
  instrument: "In each instrument.",
  tests: "In each block of tests.",
} as const;

export const fieldNeeds = {
  required: "It must be there.",
} as const;

export const fieldKinds = {
  text: "Any words.",
  number: "A number.",
  date: "A day: year-month-day.",
} as const;

/** How a time is known that nobody has the day of. */
export const roughTimes = {
  about: "Some years before or after.",
  before: "Not after that.",
  after: "Not before that.",
} as const;
