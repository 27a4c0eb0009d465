/** A run divided among several machines: which tasks are whose. */
import type { Plan, Task } from "./plan.ts";

export interface Shard {
  readonly index: number;
  readonly of: number;
}

export function shardOf(text: string): Shard | undefined {
  const [, index = "", of = ""] = /^([1-9]\d{0,3})\/([1-9]\d{0,3})$/.exec(text) ?? [];
  return Number(index) >= 1 && Number(index) <= Number(of) ? { index: Number(index), of: Number(of) } : undefined;
}

/**
 * The tasks of a shard. The largest are dealt out first, each to whoever has least, so that all take about as long. It
 * follows from the files alone, so that every machine with the same files divides them alike.
 */
export function tasksOf({ index, of }: Shard, { tasks }: Plan): readonly Task[] {
  const loads = Array.from({ length: of }, () => 0);
  const own = new Set<number>();
  const sorted = [...tasks.entries()].sort(([a, one], [b, other]) => other.size - one.size || a - b);
  for (const [number, { size }] of sorted) {
    const least = loads.indexOf(Math.min(...loads));
    loads[least] = (loads[least] ?? 0) + size + overhead;
    if (least === index - 1) own.add(number);
  }
  return tasks.filter((_, number) => own.has(number));
}

/** An empty file costs something too. */
const overhead = 200;
