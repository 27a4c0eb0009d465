import { memory, published, table } from "./table.ts";

/** Diversity by purpose. X, Y and Z: largest, second and remaining. */
export interface DiversityAllowance {
  /** Short name for look-up. */
  readonly key: string;
  /** Circuit purpose. */
  readonly purpose: string;
  /** Individual households. */
  readonly households: string;
  /** Small shops, offices. */
  readonly smallShops: string;
  /** Small hotels, guest houses. */
  readonly hotels: string;
}

export const diversityAllowances = table<DiversityAllowance>({
  id: "diversity",
  title: "Diversity allowances",
  ref: "IET On-Site Guide, Table A2",
  edition: "18th Edition guidance; the same figures since the 16th Edition",
  applies: "Estimation only, not a limit. X/Y/Z: largest, second and remaining appliances.",
  units: { key: "", purpose: "", households: "", smallShops: "", hotels: "" },
  standing: "published",
  rows: [
    { key: "lighting", purpose: "Lighting", households: "66 % of total", smallShops: "90 %", hotels: "75 %" },
    {
      key: "heating-power",
      purpose: "Heating and power",
      households: "100 % to 10 A + 50 % of remainder",
      smallShops: "100%X + 75%(Y+Z)",
      hotels: "100%X + 80%Y + 60%Z",
    },
    {
      key: "cookers",
      purpose: "Cookers",
      households: "10 A + 30 % of the rest + 5 A if a socket",
      smallShops: "100%X + 80%Y + 60%Z",
      hotels: "100%X + 80%Y + 60%Z",
    },
    {
      key: "motors",
      purpose: "Motors (not lifts)",
      households: "not applicable",
      smallShops: "100%X + 80%Y + 60%Z",
      hotels: "100%X + 50%(Y+Z)",
    },
    {
      key: "instantaneous-heaters",
      purpose: "Instantaneous water heaters",
      households: "100%X + 100%Y + 25%Z",
      smallShops: "100%X + 100%Y + 25%Z",
      hotels: "100%X + 100%Y + 25%Z",
    },
    {
      key: "thermostatic-heaters",
      purpose: "Thermostatically controlled water heaters",
      households: "no diversity (100 %)",
      smallShops: "100 %",
      hotels: "100 %",
    },
    { key: "floor-warming", purpose: "Floor warming", households: "100 %", smallShops: "100 %", hotels: "100 %" },
    {
      key: "storage-heating",
      purpose: "Thermal storage heating",
      households: "100 %",
      smallShops: "100 %",
      hotels: "100 %",
    },
    {
      key: "standard-circuits",
      purpose: "Standard final circuits (OSG arrangement)",
      households: "100%X + 40%(Y+Z)",
      smallShops: "100%X + 50%(Y+Z)",
      hotels: "100%X + 50%(Y+Z)",
    },
    {
      key: "sockets",
      purpose: "Sockets and stationary equipment",
      households: "100%X + 40%(Y+Z)",
      smallShops: "100%X + 75%(Y+Z)",
      hotels: "100%X + 75%Y + 40%Z",
    },
  ],
  seen: [
    "TLC wholesaler book Table 6.2: allowance for diversity",
    "DIYWiki: diversity (domestic)",
    "Contractor page quoting Guidance Note 1 Table H2",
  ],
});

/** A circuit as it is usually met in a dwelling. */
export interface TypicalCircuit {
  /** Short name for look-up. */
  readonly key: string;
  readonly circuit: string;
  /** Device, A. */
  readonly rating: string;
  /** Cable, mm². */
  readonly cable: string;
  readonly remark: string;
}

export const typicalCircuits = table<TypicalCircuit>({
  id: "typical-circuits",
  title: "Typical domestic circuits (conventions)",
  ref: "IET On-Site Guide, section 7 and Appendix H",
  edition: "18th Edition practice; not a limit",
  applies: "Flat twin and earth, clipped direct or similar, subject to Iz, Zs, volt drop.",
  units: { key: "", circuit: "", rating: "A", cable: "mm²", remark: "" },
  standing: "memory",
  rows: [
    memory(
      { key: "lighting", circuit: "Lighting", rating: "6", cable: "1.0 or 1.5", remark: "6 A type B convention" },
      { cable: "published" },
      "The page lists the sizes; the 6 A device is from memory.",
    ),
    {
      key: "lampholder",
      circuit: "Lampholder rating (BS EN 61184 lampholders B15, B22; E14, E27)",
      rating: "16",
      cable: "",
      remark: "circuit up to 16 A",
    },
    published({
      key: "ring",
      circuit: "Ring final 13 A sockets",
      rating: "30 or 32",
      cable: "2.5/1.5",
      remark: "100 m²",
    }),
    { key: "radial-20", circuit: "20 A radial sockets", rating: "20", cable: "2.5/1.5", remark: "50 m² (OSG)" },
    { key: "radial-32", circuit: "32 A radial sockets", rating: "30 or 32", cable: "4/1.5", remark: "75 m² (OSG)" },
    { key: "cooker", circuit: "Cooker", rating: "30 or 32", cable: "6/2.5", remark: "through a cooker control unit" },
    memory(
      {
        key: "shower",
        circuit: "Shower 7.5 kW, 8.5 kW, 9.5-10.5 kW",
        rating: "32-40, 40, 45-50",
        cable: "6, 10, 10-16",
        remark: "check Iz and Zs",
      },
      {},
      "Above about 7.5 kW usually 6 mm² or more.",
    ),
    { key: "immersion", circuit: "Immersion heater 3 kW", rating: "16", cable: "1.5-2.5", remark: "" },
    { key: "ev", circuit: "EV charging 32 A", rating: "32 or 40", cable: "6 to 10", remark: "Section 722" },
  ],
  seen: [
    "Engineering firm page: fixed-wiring cable sizes and ratings",
    "Basic Electrical Installation Work, p.302, Table 14.4 cable size for standard domestic circuits",
    "DIYnot wiki: Regulation 433.1.5 (now 433.1.204)",
  ],
});
