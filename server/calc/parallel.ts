/** Conductors alike in parallel: what flows in one of them where the fault is in that one and fed from both its ends. */

/** A fault in one of `count` conductors, somewhere along them. */
interface FaultInOne {
  /** Of the length from the supply, 0 to 1. */
  readonly at: number;
  /** What of the fault current comes along the nearer part of the faulty one; the rest comes round through the others. */
  readonly share: number;
  /** The resistance to the fault, as a multiple of what all of them together have from end to end. */
  readonly times: number;
}

/**
 * The nearer part of the faulty conductor, x of r, lies beside the rest of it in series with all others: (1 − x) r + r / (n − 1).
 * What comes by it is 1 − x (n − 1) / n of the current, and the resistance of both branches together is that share of x r.
 */
export function faultInOneOf(count: number, at: number): FaultInOne {
  const left = count - at * (count - 1);
  return { at, share: left / count, times: at * left };
}
