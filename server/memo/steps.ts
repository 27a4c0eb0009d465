/** Long work that stops between its parts, so that whoever runs it can see to something else, or leave it for good. */
export type Steps<T> = Generator<undefined, T, undefined>;

/** All of it at once. */
export function finished<T>(steps: Steps<T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** What is made of each, so many of them between two stops. */
export function* eachInSteps<A, B>(
  items: readonly A[],
  atOnce: number,
  make: (item: A, index: number) => B,
): Steps<B[]> {
  const made: B[] = [];
  for (let at = 0; at < items.length; at++) {
    if (at > 0 && at % atOnce === 0) yield;
    made.push(make(items[at] as A, at));
  }
  return made;
}
