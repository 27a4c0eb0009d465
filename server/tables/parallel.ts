import { ruleFrom, sourced } from "./source.ts";

/**
 * Rules for conductors in parallel. What is calculated by them follows from Kirchhoff's laws and not from a figure of
 * theirs. The conditions of 523.7 and the rule against branches are quoted on one page:
 * - NAPIT: A brief guide to the use of parallel conductors
 */
const from = (clause: string) => ruleFrom(`BS 7671:2018+A2:2022, ${clause}`, "quoted");

export const parallelSources = {
  /** Iz is the sum of what each carries, where they share the load equally. */
  capacity: from("433.4.1"),
  sharing: from("523.7"),
  branches: from("433.4 and 523.7"),
  /** A fault in one of them, fed from both ends. */
  fault: from("434.4"),
} as const;

/** Above these sizes (mm²) single-core cables share a load equally only by how they are arranged. */
export const arrangedAbove = {
  copper: sourced(50, "BS 7671:2018+A2:2022, 523.7", "memory"),
  aluminium: sourced(70, "BS 7671:2018+A2:2022, 523.7", "memory"),
} as const;
