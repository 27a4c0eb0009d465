import { table } from "./table.ts";

/** Diversity by purpose. X, Y and Z: largest, second and remaining. */
interface DiversityAllowance {
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
  standing: "quoted",
  rows: () => [
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
  // Quoted on these pages:
  // - TLC wholesaler book Table 6.2: allowance for diversity
  // - DIYWiki: diversity (domestic)
  // - Contractor page quoting Guidance Note 1 Table H2
  quotedOn: 3,
});
