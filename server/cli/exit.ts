/** What the exit code of every command means. */
export const exit = {
  clean: 0,
  /** The command ran, and what it looked for is there: errors, unformatted files. */
  errors: 1,
  /** The command, or a part of it, could not be run. */
  failed: 2,
  /** It was interrupted, and what it reported is not whole; as shells number it. */
  interrupted: 130,
} as const;
