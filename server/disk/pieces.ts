import { constants } from "node:fs";

/** Opening a pipe like this does not wait for its writer. Windows has neither such pipes nor the flag. */
export const withoutWaiting = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0);

/** The same, and a link is not followed, where the system knows how. */
export const withoutLinks = withoutWaiting | (constants.O_NOFOLLOW ?? 0);

/** Room for what is left of a file, and for what is written to it meanwhile. */
export const pieceOf = (size: number, read: number): Buffer => Buffer.allocUnsafe(Math.max(size - read, 0) + 256);

/** Whether a file was read to its end: all it had, and then less than there was room for. */
export const isAll = (size: number, read: number, room: number): boolean => read === size && read < room;
