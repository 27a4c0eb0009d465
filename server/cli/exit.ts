/** What the exit code of every command means. */
export const exit = {
  clean: 0,
  /** The command ran, and what it looked for is there: errors, unformatted files. */
  errors: 1,
  /** The command, or a part of it, could not be run. */
  failed: 2,
} as const;
