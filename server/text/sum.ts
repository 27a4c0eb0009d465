/** Of figures of one unit; 0 of none. */
export const sum = (figures: readonly number[]): number => figures.reduce((total, figure) => total + figure, 0);
