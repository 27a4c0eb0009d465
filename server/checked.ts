/** Between a program and what started it: that a first schedule was checked, whatever came of it. */
import { channel } from "node:diagnostics_channel";

export const checkedChannel = "wayfile:checked";

const checked = channel(checkedChannel);

/** `goesOn`: only a part of it was, and the same work over and over follows. */
export const announceChecked = (goesOn = false): void => checked.publish(goesOn);
