/** Days from one to another, both written as 2026-03-05. */
export const daysBetween = (from: string, to: string): number => Math.round((time(to) - time(from)) / 86_400_000);

const time = (day: string): number => new Date(`${day}T00:00:00Z`).getTime();
