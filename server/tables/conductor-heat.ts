import { computed, table } from "./table.ts";

/** What k follows from: k = c √ln((β + θ final) / (β + θ initial)). */
interface MetalConstant {
  readonly material: "copper" | "aluminium" | "steel" | "lead";
  /** Reciprocal of the temperature coefficient of resistance at 0 °C, °C. */
  readonly beta: number;
  /** Factor before the root, A√s/mm². */
  readonly factor: number;
}

export const metalConstants = table<MetalConstant>({
  id: "heat-metal",
  title: "Constants of the conductor metals",
  ref: "IEC 60949",
  edition: "unchanged",
  applies: "k = c √ln((β + θ final) / (β + θ initial)); resistance rises by 1/(β + 20) per kelvin from 20 °C.",
  units: { material: "", beta: "°C", factor: "A√s/mm²" },
  standing: "computed",
  rows: () => [
    { material: "copper", beta: 234.5, factor: 226 },
    { material: "aluminium", beta: 228, factor: 148 },
    { material: "steel", beta: 202, factor: 78 },
    { material: "lead", beta: 230, factor: 41 },
  ],
  notes: ["Recalled; every k of the printed Tables 54.2 to 54.5 follows from them and the temperatures beside them."],
});

/** From and to what temperature a protective conductor warms in a fault. */
interface FaultTemperature {
  /** As the case is named beside its k. */
  readonly case: string;
  readonly insulation: "pvc70" | "pvc90" | "ts90";
  /** °C. */
  readonly initial: number;
  /** °C. */
  readonly final: number;
}

export const faultTemperatures = table<FaultTemperature>({
  id: "heat-temperatures",
  title: "Initial and final temperatures of protective conductors",
  ref: "BS 7671:2018+A2:2022, Tables 54.2 to 54.5",
  edition: "unchanged",
  applies: "Initial: in normal service. Final: the most in a fault.",
  units: { case: "", insulation: "", initial: "°C", final: "°C" },
  standing: "computed",
  rows: () => [
    {
      case: "separate insulated or bare protective conductor, not bunched",
      insulation: "pvc70",
      initial: 30,
      final: 160,
    },
    {
      case: "separate insulated or bare protective conductor, not bunched",
      insulation: "ts90",
      initial: 30,
      final: 250,
    },
    { case: "incorporated in a cable or bunched", insulation: "pvc70", initial: 70, final: 160 },
    { case: "incorporated in a cable or bunched", insulation: "pvc90", initial: 90, final: 160 },
    { case: "incorporated in a cable or bunched", insulation: "ts90", initial: 90, final: 250 },
    computed(
      { case: "sheath or armour as protective conductor", insulation: "pvc70", initial: 60, final: 200 },
      {},
      "An armour is taken as 10 °C cooler than its cores; a sum on EngX calculates with 60 °C too.",
    ),
    { case: "sheath or armour as protective conductor", insulation: "ts90", initial: 80, final: 200 },
    { case: "steel conduit, ducting, trunking as protective conductor", insulation: "pvc70", initial: 50, final: 160 },
    { case: "steel conduit, ducting, trunking as protective conductor", insulation: "pvc90", initial: 60, final: 160 },
    { case: "steel conduit, ducting, trunking as protective conductor", insulation: "ts90", initial: 60, final: 250 },
  ],
  notes: ["Recalled; the printed k follow from them."],
});
