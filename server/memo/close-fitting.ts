const nothing: readonly never[] = [];

/** A list that has grown has room for twice what is in it, and this one is kept: it gets the room it needs. */
export const closeFitting = <T>(list: readonly T[]): readonly T[] => (list.length === 0 ? nothing : list.slice());
